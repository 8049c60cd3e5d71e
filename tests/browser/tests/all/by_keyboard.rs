//! The main path without a finger or a mouse, and the focus always to be seen.

use browser_tests::{Reading, Site, Tab, Visit};

/// Whether the focused thing, or the label drawn for it, has an outline to see.
const FOCUS_SEEN: &str = r#"(() => {
  const one = document.activeElement;
  if (!one || one === document.body) return false;
  const drawn = [one, one.nextElementSibling].filter(Boolean);
  return one.matches(":focus-visible") && drawn.some((part) => {
    const style = getComputedStyle(part);
    return style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
  });
})()"#;

/// Goes on with the Tab key until this has the focus; each stop on the way must be seen.
#[track_caller]
fn tab_to(tab: &Tab, selector: &str) {
    for _ in 0..80 {
        tab.press("Tab");
        let there = tab.is(&format!("document.activeElement.matches({selector:?})"));
        assert!(
            tab.is(FOCUS_SEEN),
            "the focus cannot be seen on {}",
            tab.text("document.activeElement.outerHTML.slice(0, 200)")
        );
        if there {
            return;
        }
    }
    panic!("{selector} cannot be reached with the Tab key\n{}", tab.seen());
}

#[track_caller]
fn enter_to(tab: &Tab, selector: &str) {
    tab_to(tab, selector);
    tab.press_to("Enter");
}

#[test]
fn from_the_list_to_a_written_entry() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(90).tab(Reading::DESK);
    tab.go(&server, "/");
    tab.press("Tab");
    assert!(tab.is("document.activeElement.matches('.skip')"), "the first stop leads past the top");
    assert!(tab.is("document.activeElement.getBoundingClientRect().left >= 0"), "and is seen when it has the focus");
    enter_to(&tab, ".slabs a");
    assert_eq!(tab.path(), format!("/slab/{}", site.slab()));
    let step = tab.text("document.querySelector('.answer a.button').getAttribute('href')");
    enter_to(&tab, ".answer a.button");
    let went = tab.text("location.pathname + location.search");
    assert_eq!(went, step);
    assert_eq!(tab.path(), format!("/slab/{}/add/water_drop", site.slab()), "the first test of all");
    tab_to(&tab, "[name='place_kind']");
    tab.press("Space");
    tab_to(&tab, "button[name='preset'][value='soaked_60_s']");
    tab.press_to("Space");
    let diary = site.diary();
    let drop = diary.iter().find(|e| e["body"]["kind"] == "water_drop").expect("the drop is in the diary");
    assert_eq!(drop["body"]["soaked_in"], "60 s");
}

#[test]
fn enter_in_a_field_writes_what_was_typed_and_no_preset() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::DESK);
    tab.go(&server, &format!("/slab/{}/add/water_drop", site.slab()));
    tab.choose("place_kind", "zone:shop");
    tab.fill("[name='soaked_in']", "41 s");
    tab.press_to("Enter");
    let diary = site.diary();
    let drop = diary.iter().find(|e| e["body"]["kind"] == "water_drop").expect("the drop is in the diary");
    assert_eq!(drop["body"]["soaked_in"], "41 s");
}

#[test]
fn enter_without_script_writes_what_was_typed_and_no_preset() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::DESK.without_script());
    tab.go(&server, &format!("/slab/{}/add/water_drop", site.slab()));
    tab.choose("place_kind", "zone:shop");
    tab.fill("[name='soaked_in']", "41 s");
    tab.press_to("Enter");
    let diary = site.diary();
    let drop = diary.iter().find(|e| e["body"]["kind"] == "water_drop").expect("the drop is in the diary");
    assert_eq!(drop["body"]["soaked_in"], "41 s");
}
