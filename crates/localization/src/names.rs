//! Names of trade terms, diary kinds and grades.

use trade_facts::{Citation, Grade, Trade};

use crate::locale::{Lang, Locale};

impl Locale {
    /// The name of a finish, incident or sealer class, or of an item of the site check. What is
    /// none of them, such as the name of a mix, comes back as it is.
    #[must_use]
    pub fn term(self, id: &str) -> String {
        let key = format!("term-{id}");
        if self.knows(&key) {
            return self.message(&key, &[]);
        }
        if self.lang == Lang::En {
            let trade = Trade::built_in();
            let name = trade
                .finish(id)
                .map(|r| &r.name)
                .or_else(|| trade.incident(id).map(|r| &r.name))
                .or_else(|| trade.sealer(id).map(|r| &r.name));
            if let Some(name) = name {
                return name.clone();
            }
        }
        id.to_owned()
    }

    /// The name of a kind of diary entry. A kind that a newer version wrote comes back as it is.
    #[must_use]
    pub fn kind(self, kind: &str) -> String {
        let key = format!("kind-{}", kind.replace('_', "-"));
        if self.knows(&key) { self.message(&key, &[]) } else { kind.to_owned() }
    }

    /// What a fact rests on, each wording once; a dash where no source carries it. Names of standards
    /// are the same in both languages.
    #[must_use]
    pub fn cite(self, trade: &Trade, citation: &Citation) -> String {
        let cited: Vec<String> = trade.cite(citation).into_iter().map(|name| self.source(name)).collect();
        if cited.is_empty() { "-".to_owned() } else { cited.join("; ") }
    }

    fn source(self, name: &str) -> String {
        let key = format!("cite-{}", slug(name));
        if self.knows(&key) { self.message(&key, &[]) } else { name.to_owned() }
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

/// The words of a name joined by hyphens, as message keys are written.
fn slug(name: &str) -> String {
    let plain: String =
        name.chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { ' ' }).collect();
    plain.split_whitespace().collect::<Vec<_>>().join("-")
}
