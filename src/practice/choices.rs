//! What a learner may choose for the display, as the screen and the line dialogue list it.

use crate::text::{Decimal, Language, Settings, Slope, Symbols, Turning};
use std::sync::LazyLock;

/// The keys of the words for each language: that of the surroundings, then those built in.
static LANGUAGES: LazyLock<Vec<&str>> = LazyLock::new(|| {
    let named = Language::all().map(Language::name_key);
    std::iter::once("settings.language.found")
        .chain(named)
        .collect()
});

/// A thing to choose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// The key of the words that say what is chosen.
    pub heading: &'static str,
    /// The keys of the words for each value.
    pub values: &'static [&'static str],
    /// Which of them holds, by its place.
    pub taken: usize,
}

/// Everything that may be chosen, and what holds.
pub fn choices(settings: Settings) -> [Choice; 5] {
    let choice = |heading, values, taken| Choice {
        heading,
        values,
        taken,
    };
    [
        choice(
            "settings.turning",
            &["settings.turning.moment", "settings.turning.torque"],
            usize::from(settings.turning == Turning::Torque),
        ),
        choice(
            "settings.decimal",
            &[
                "settings.decimal.found",
                "settings.decimal.point",
                "settings.decimal.comma",
            ],
            match settings.decimal {
                Decimal::Found => 0,
                Decimal::Point => 1,
                Decimal::Comma => 2,
            },
        ),
        choice(
            "settings.symbols",
            &[
                "settings.symbols.found",
                "settings.symbols.unicode",
                "settings.symbols.ascii",
            ],
            match settings.symbols {
                Symbols::Found => 0,
                Symbols::Unicode => 1,
                Symbols::Ascii => 2,
            },
        ),
        choice(
            "settings.slope",
            &["settings.slope.line", "settings.slope.characters"],
            usize::from(settings.slope == Slope::Characters),
        ),
        choice(
            "settings.language",
            &LANGUAGES,
            Language::all()
                .position(|language| settings.language == Some(language))
                .map_or(0, |place| place + 1),
        ),
    ]
}

/// The settings with another value of one choice, both by their places in [`choices`]; unchanged
/// where there is no such place.
pub fn choose(mut settings: Settings, choice: usize, value: usize) -> Settings {
    match (choice, value) {
        (0, 0) => settings.turning = Turning::Moment,
        (0, 1) => settings.turning = Turning::Torque,
        (1, 0) => settings.decimal = Decimal::Found,
        (1, 1) => settings.decimal = Decimal::Point,
        (1, 2) => settings.decimal = Decimal::Comma,
        (2, 0) => settings.symbols = Symbols::Found,
        (2, 1) => settings.symbols = Symbols::Unicode,
        (2, 2) => settings.symbols = Symbols::Ascii,
        (3, 0) => settings.slope = Slope::Line,
        (3, 1) => settings.slope = Slope::Characters,
        (4, 0) => settings.language = None,
        (4, place) => {
            let language = Language::all().nth(place - 1);
            settings.language = language.or(settings.language);
        }
        _ => {}
    }
    settings
}

/// The settings with the next value of one choice, round and round.
pub fn choose_next(settings: Settings, choice: usize) -> Settings {
    let Some(now) = choices(settings).get(choice).copied() else {
        return settings;
    };
    choose(settings, choice, (now.taken + 1) % now.values.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_value_can_be_chosen_and_is_then_the_one_that_holds() {
        let mut settings = Settings::default();
        for place in 0..choices(settings).len() {
            let count = choices(settings)[place].values.len();
            for value in (0..count).rev() {
                settings = choose(settings, place, value);
                assert_eq!(choices(settings)[place].taken, value, "{place}");
            }
            for step in 1..=count {
                settings = choose_next(settings, place);
                assert_eq!(choices(settings)[place].taken, step % count, "{place}");
            }
            assert_eq!(choose(settings, place, count), settings);
        }
        assert_eq!(choose_next(settings, 9), settings);
    }
}
