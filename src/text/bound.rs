//! Which spaces of a text no line may be broken at.

/// A space at which no line ends: before a unit, and behind an equals sign.
pub const HARD_SPACE: char = '\u{a0}';

/// A space at which a line ends only where all that it binds is too long for one: before an equals
/// sign.
pub const SOFT_SPACE: char = '\u{202f}';

/// Units that stay with their number.
const UNITS: [&str; 12] = [
    "N", "kN", "kgf", "lbf", "kg", "g", "t", "m", "cm", "mm", "deg", "rad",
];

/// Functions that stay with what they are taken of.
const FUNCTIONS: [&str; 3] = ["sin", "cos", "tan"];

/// The text with hard and soft spaces, each in the place of an ordinary one: "L = 5.4 m".
pub fn bound(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let (mut before, mut unit_before) = ("", false);
    for (place, word) in text.split(' ').enumerate() {
        let number_before = before.ends_with(|c: char| c.is_ascii_digit());
        let letters = word.trim_end_matches(|c: char| !c.is_alphabetic());
        let end = letters.find(|c: char| !c.is_alphabetic());
        let lead = &letters[..end.unwrap_or(letters.len())];
        // "N m" after a number is one unit.
        let metre = unit_before && matches!(before, "N" | "kN") && matches!(lead, "m" | "cm");
        let unit = number_before && UNITS.contains(&lead) || metre;
        if place > 0 {
            out.push(match word {
                "=" => SOFT_SPACE,
                _ if before == "=" || unit || takes(before) => HARD_SPACE,
                _ => ' ',
            });
        }
        out.push_str(word);
        (before, unit_before) = (word, unit);
    }
    out
}

/// True if a word ends with a function of the next: "T·sin" before "65°".
fn takes(word: &str) -> bool {
    let end = word.rsplit(|c: char| !c.is_alphabetic()).next();
    end.is_some_and(|end| FUNCTIONS.contains(&end))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_their_units_and_equations_their_right_side() {
        for (text, wanted) in [
            ("It is 385 N.", "It is 385~N."),
            ("g = 9.8 m/s² here", "g_=~9.8~m/s² here"),
            ("8 kg·9.8 m/s² + 2 m", "8~kg·9.8~m/s² + 2~m"),
            ("(349 N)² and 12 N m, so", "(349~N)² and 12~N~m, so"),
            ("385 Newtons for N m", "385 Newtons for N m"),
            ("m = 3, 4 times", "m_=~3, 4 times"),
            ("T·sin 65.0°·3.8 m + cos α", "T·sin~65.0°·3.8~m + cos~α"),
            ("no sine, or cosin 3", "no sine, or cosin 3"),
            ("a 5 °C day, 35 deg", "a 5 °C day, 35~deg"),
            ("", ""),
        ] {
            let shown = bound(text)
                .replace(HARD_SPACE, "~")
                .replace(SOFT_SPACE, "_");
            assert_eq!(shown, wanted);
            assert_eq!(bound(text).chars().count(), text.chars().count());
        }
    }
}
