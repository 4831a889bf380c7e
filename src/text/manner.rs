//! How words and figures are shown to a learner who has chosen: only shown, nothing is judged by it.

use super::language::Language;
use super::prose::{Piece, Prose, Tag};
use super::words::Words;

/// The word for what turns a body.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Turning {
    /// Moment.
    #[default]
    Moment,
    /// Torque.
    Torque,
}

/// The sign before the decimals of a number.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Decimal {
    /// As the language has it.
    #[default]
    Found,
    /// A point.
    Point,
    /// A comma.
    Comma,
}

/// Which characters are shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Symbols {
    /// As the surroundings say.
    #[default]
    Found,
    /// Beyond ASCII.
    Unicode,
    /// ASCII only.
    Ascii,
}

/// How a slope is drawn: fonts differ.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Slope {
    /// Not asked yet; drawn as a line.
    #[default]
    Unasked,
    /// As a line of dots.
    Line,
    /// With ordinary characters.
    Characters,
}

/// What a learner has chosen for the display.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Settings {
    /// The word for what turns a body.
    pub turning: Turning,
    /// The sign before the decimals.
    pub decimal: Decimal,
    /// Which characters.
    pub symbols: Symbols,
    /// How slopes are drawn.
    pub slope: Slope,
    /// In which language practice speaks; none for that of the surroundings.
    pub language: Option<Language>,
}

/// A way to show texts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Manner {
    /// Words, and what is shown in their place.
    exchanged: Vec<(String, String)>,
    comma: bool,
}

impl Manner {
    /// The way that somebody has chosen.
    pub fn of(settings: Settings, words: &Words) -> Manner {
        let list = words.word("manner.torque");
        let pairs = list.split(',').filter_map(|pair| {
            let (from, to) = pair.split_once('=')?;
            Some((from.trim().to_owned(), to.trim().to_owned()))
        });
        Manner {
            exchanged: match settings.turning {
                Turning::Moment => Vec::new(),
                Turning::Torque => pairs.collect(),
            },
            comma: match settings.decimal {
                Decimal::Found => words.word("manner.decimal") == "comma",
                Decimal::Point => false,
                Decimal::Comma => true,
            },
        }
    }

    /// True if figures are shown with a comma.
    pub fn has_comma(&self) -> bool {
        self.comma
    }

    /// A text as it is shown.
    pub fn text(&self, text: &str) -> String {
        self.figures(&self.words(text))
    }

    /// A sentence as it is shown. What is to be typed keeps its words.
    pub fn prose(&self, prose: &Prose) -> Prose {
        if self.exchanged.is_empty() && !self.comma {
            return prose.clone();
        }
        let piece = |piece: &Piece| Piece {
            tag: piece.tag,
            text: match piece.tag {
                Tag::Key => self.figures(&piece.text),
                _ => self.text(&piece.text),
            },
        };
        Prose(prose.0.iter().map(piece).collect())
    }

    /// Whole words exchanged, small letters and capitals kept.
    fn words(&self, text: &str) -> String {
        if self.exchanged.is_empty() {
            return text.to_owned();
        }
        let mut shown = String::new();
        let mut rest = text;
        while !rest.is_empty() {
            let letters = rest
                .find(|c: char| !c.is_alphabetic())
                .unwrap_or(rest.len());
            let (word, after) = rest.split_at(letters);
            shown += &self.word(word);
            let gap = after.find(char::is_alphabetic).unwrap_or(after.len());
            shown += &after[..gap];
            rest = &after[gap..];
        }
        shown
    }

    fn word(&self, word: &str) -> String {
        let small = word.to_lowercase();
        let Some((_, to)) = self.exchanged.iter().find(|(from, _)| *from == small) else {
            return word.to_owned();
        };
        let mut letters = to.chars();
        match (word.chars().next(), letters.next()) {
            (Some(first), Some(other)) if first.is_uppercase() => {
                other.to_uppercase().chain(letters).collect()
            }
            _ => to.clone(),
        }
    }

    /// A point between digits becomes a comma.
    fn figures(&self, text: &str) -> String {
        if !self.comma || !text.contains('.') {
            return text.to_owned();
        }
        let letters: Vec<char> = text.chars().collect();
        let digit = |place: usize| letters.get(place).is_some_and(char::is_ascii_digit);
        let shown = letters.iter().enumerate().map(|(place, c)| {
            let decimal = *c == '.' && place > 0 && digit(place - 1) && digit(place + 1);
            if decimal { ',' } else { *c }
        });
        shown.collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn manner(turning: Turning, decimal: Decimal) -> Manner {
        let settings = Settings {
            turning,
            decimal,
            ..Settings::default()
        };
        Manner::of(settings, &Words::english())
    }

    #[test]
    fn words_and_figures_are_shown_as_chosen() {
        let plain = manner(Turning::Moment, Decimal::Point);
        let other = manner(Turning::Torque, Decimal::Comma);
        for (text, shown) in [
            ("", ""),
            ("Moments about the hinge.", "Torques about the hinge."),
            ("the moment sum", "the torque sum"),
            ("momentum, momentous", "momentum, momentous"),
            ("W1 = 96.3 N.", "W1 = 96,3 N."),
            ("See 4. Then 5.", "See 4. Then 5."),
            (".5 and 5.", ".5 and 5."),
            ("θ = 35.0°, T·sin(35.5°)", "θ = 35,0°, T·sin(35,5°)"),
        ] {
            assert_eq!(plain.text(text), text);
            assert_eq!(other.text(text), shown);
        }
    }

    #[test]
    fn what_is_to_be_typed_keeps_its_words() {
        let words = Words::parse(r#"{"a": "A moment: type `moment 3.5`."}"#)
            .unwrap_or_else(|trouble| panic!("{trouble}"));
        let other = manner(Turning::Torque, Decimal::Comma);
        let shown = other.prose(&words.say("a", &[])).to_string();
        assert_eq!(shown, "A torque: type moment 3,5.");
    }
}
