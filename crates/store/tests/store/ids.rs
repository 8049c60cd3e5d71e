//! Ids and hashes in their published forms.

use proptest::prelude::*;
use slab_diary::SlabId;
use store::{LinkId, PersonId};

#[test]
fn an_id_is_written_as_the_standard_writes_it() {
    // RFC 9562, appendix A.6, example of a version 7 UUID; from memory (M).
    let text = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";
    assert_eq!(PersonId::from_u128(0x017F_22E2_79B0_7CC3_98C4_DC0C_0C07_398F).to_string(), text);
    assert_eq!(text.to_uppercase().parse::<LinkId>().expect("an id").to_string(), text);
    let error = "ana".parse::<PersonId>().expect_err("no id").to_string();
    assert!(error.starts_with("person \"ana\" is not an id; accepted: a UUID such as"), "{error}");
}

proptest! {
    #[test]
    fn any_id_comes_back_and_reads_as_the_uuid_library_reads_it(bits: u128) {
        let id = PersonId::from_u128(bits);
        let text = id.to_string();
        prop_assert_eq!(text.parse::<PersonId>().expect("an id"), id);
        let library: SlabId = text.parse().expect("a UUID");
        prop_assert_eq!((library.0.as_u128(), library.to_string()), (id.as_u128(), text));
    }
}
