//! What a photograph says of the slab's color. The codes and numbers are the measuring crate's; here
//! they become sentences.

use crate::locale::Locale;
use crate::messages::Arg;

impl Locale {
    /// Why a photograph's verdict is what it is: the key of the reason, and its numbers by name.
    #[must_use]
    pub fn photo_why(self, key: &'static str, values: &[(&'static str, f64)]) -> String {
        let args: Vec<(&str, Arg<'_>)> = values
            .iter()
            .map(|(name, value)| {
                let said: Arg<'_> = match *name {
                    "count" => Arg::Number(*value),
                    "share" | "most" => self.percent((*value * 100.0).round()).into(),
                    // Least pixels, or least share of the picture.
                    "least" if *value <= 1.0 => self.percent((*value * 100.0).round()).into(),
                    "width" | "height" | "least" => self.number(*value, 0).into(),
                    _ => self.number(*value, 1).into(),
                };
                (*name, said)
            })
            .collect();
        self.message(key, &args)
    }

    /// The verdict in one sentence: `even`, `patchy` or `cant_tell`.
    #[must_use]
    pub fn photo_verdict(self, word: &str) -> String {
        let key = match word {
            "even" => "photo-verdict-even",
            "patchy" => "photo-verdict-patchy",
            _ => "photo-verdict-cant-tell",
        };
        self.message(key, &[])
    }

    /// Where a row of photographs is heading: `too_few`, `more_even`, `no_change` or `less_even`.
    #[must_use]
    pub fn photo_trend(self, word: &str) -> String {
        let key = match word {
            "more_even" => "photo-trend-more-even",
            "no_change" => "photo-trend-no-change",
            "less_even" => "photo-trend-less-even",
            _ => "photo-trend-too-few",
        };
        self.message(key, &[])
    }
}
