//! Names of trade terms, diary kinds and grades.

use slab_diary::{Body, EntryKind};
use trade_facts::{Citation, Grade, Source, Trade};

use crate::locale::Locale;

impl Locale {
    /// The name of a finish, incident or sealer class, or of an item of the site check. What is
    /// none of them, such as the name of a mix, comes back as it is.
    #[must_use]
    pub fn term(self, id: &str) -> String {
        match id {
            "water" => return self.message("term-water", &[]),
            "eyewash" => return self.message("term-eyewash", &[]),
            "waste-plan" => return self.message("term-waste-plan", &[]),
            "data-sheets" => return self.message("term-data-sheets", &[]),
            _ => {}
        }
        let trade = Trade::built_in();
        let name = trade.finish(id).map(|finish| self.text_of(finish, "name"));
        let name = name.or_else(|| trade.incident(id).map(|incident| self.text_of(incident, "name")));
        let name = name.or_else(|| trade.sealer(id).map(|sealer| self.text_of(sealer, "name")));
        name.unwrap_or_else(|| id.to_owned())
    }

    /// What takes out what an incident of this kind left, as far as the trade knows.
    #[must_use]
    pub fn remedy(self, incident: &str) -> String {
        match Trade::built_in().incident(incident) {
            Some(record) => self.text_of(record, "remedy"),
            None => self.message("remedy-unknown", &[]),
        }
    }

    /// What a figure of the trade is about.
    #[must_use]
    pub fn fact(self, id: &str) -> String {
        Trade::built_in().fact(id).map_or_else(|| id.to_owned(), |fact| self.text_of(fact, "statement"))
    }

    /// The name of a kind of entry.
    #[must_use]
    pub fn kind(self, kind: EntryKind) -> String {
        self.message_built(&format!("kind-{}", kind.name().replace('_', "-")), &[])
    }

    /// The name of the kind of an entry. A kind that a newer version wrote comes back as it is.
    #[must_use]
    pub fn kind_of(self, body: &Body) -> String {
        body.kind().map_or_else(|| body.kind_name().to_owned(), |kind| self.kind(kind))
    }

    /// What a fact rests on, each wording once; where no source carries it, that.
    #[must_use]
    pub fn cite(self, trade: &Trade, citation: &Citation) -> String {
        let cited: Vec<String> = trade.cite(citation).into_iter().map(|source| self.source(source)).collect();
        match citation.grade {
            _ if !cited.is_empty() => cited.join("; "),
            Grade::CommonPractice => self.message("cite-common-practice", &[]),
            _ => self.message("cite-none", &[]),
        }
    }

    /// What a source is called. The names of standards are the same in both languages.
    #[must_use]
    pub fn source(self, source: &Source) -> String {
        if source.cite == Source::COMMON_PRACTICE {
            return self.message("cite-common-practice", &[]);
        }
        self.text_of(source, "cite")
    }

    /// How sure a fact is.
    #[must_use]
    pub fn grade(self, grade: Grade) -> String {
        let key = match grade {
            Grade::Verified => "grade-verified",
            Grade::SecondaryCopy => "grade-secondary-copy",
            Grade::FromMemory => "grade-from-memory",
            Grade::CommonPractice => "grade-common-practice",
            Grade::ExpertJudgment => "grade-expert-judgment",
        };
        self.message(key, &[])
    }
}
