//! Names of quantities as they are shown and as they may be typed.

use std::fmt;

/// The name of a quantity, such as `W_b`, `θ`, `W_1⊥` or `H_x`.
///
/// Shown without the underscore where a screen can; compared in a folded form in which case,
/// underscores, braces and the ways to write a Greek letter or ⊥ do not count.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Symbol(String);

/// Letters used in statics that a plain keyboard lacks, and how they are typed there.
const SPELLED: &[(char, &str)] = &[
    ('α', "alpha"),
    ('β', "beta"),
    ('γ', "gamma"),
    ('δ', "delta"),
    ('ε', "epsilon"),
    ('ζ', "zeta"),
    ('η', "eta"),
    ('θ', "theta"),
    ('κ', "kappa"),
    ('λ', "lambda"),
    ('μ', "mu"),
    ('ν', "nu"),
    ('ξ', "xi"),
    ('ρ', "rho"),
    ('σ', "sigma"),
    ('τ', "tau"),
    ('φ', "phi"),
    ('χ', "chi"),
    ('ψ', "psi"),
    ('ω', "omega"),
    ('Σ', "sum"),
    ('ℓ', "ell"),
];

/// How a letter is typed on a plain keyboard, if it stands on none; a capital like its small one.
fn spelled(letter: char) -> Option<&'static str> {
    let of = |letter: char| SPELLED.iter().find(|(known, _)| *known == letter);
    let small = || letter.to_lowercase().next().and_then(of);
    of(letter).or_else(small).map(|(_, spelled)| *spelled)
}

impl Symbol {
    /// The symbol written like this.
    pub fn new(text: impl Into<String>) -> Symbol {
        Symbol(text.into())
    }

    /// As written in lessons and journals: `W_1⊥`.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// As it can be typed on any keyboard: `W1perp`, `theta`.
    pub fn typed(&self) -> String {
        let mut typed = String::new();
        for c in self.0.chars() {
            match c {
                '_' => {}
                '⊥' => typed.push_str("perp"),
                '∥' => typed.push_str("par"),
                '\u{304}' => typed.push_str("bar"),
                'ȳ' => typed.push_str("ybar"),
                '′' => typed.push('\''),
                c => match spelled(c) {
                    Some(name) => typed.push_str(name),
                    None => typed.push(c),
                },
            }
        }
        typed
    }

    /// That both are shown to a learner alike: `W_1` and `W1`.
    pub(crate) fn looks_like(&self, other: &Symbol) -> bool {
        self.marks().eq(other.marks())
    }

    /// As shown to a learner: `W1⊥`, `θ`.
    pub fn shown(&self) -> String {
        self.marks().collect()
    }

    /// What of it is shown, mark by mark.
    fn marks(&self) -> impl Iterator<Item = char> {
        self.0.chars().filter(|mark| *mark != '_')
    }

    /// The folded form in which typed names are compared.
    pub fn folded(&self) -> String {
        fold(&self.0)
    }

    /// True if `typed` is a way to write this symbol.
    pub fn matches(&self, typed: &str) -> bool {
        self.folded() == fold(typed)
    }
}

impl fmt::Display for Symbol {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.shown())
    }
}

/// Folds a typed name: lower case, no underscores, braces or spaces, Greek letters spelled out,
/// subscript digits as digits, `⊥` as `perp`, every apostrophe as a prime.
pub(crate) fn fold(name: &str) -> String {
    let mut folded = String::new();
    for c in name.chars() {
        match c {
            '_' | '{' | '}' | ' ' => {}
            '⊥' => folded.push_str("perp"),
            '∥' => folded.push_str("par"),
            '\u{304}' => folded.push_str("bar"),
            'ȳ' => folded.push_str("ybar"),
            'ϑ' => folded.push_str("theta"),
            'ϕ' => folded.push_str("phi"),
            '\'' | '’' => folded.push('′'),
            'µ' => folded.push_str("mu"),
            '₀'..='₉' => folded.push(char::from(b'0' + (c as u32 - '₀' as u32) as u8)),
            c => match spelled(c) {
                Some(name) => folded.push_str(name),
                None => folded.extend(c.to_lowercase()),
            },
        }
    }
    folded
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_forgiven_case_and_subscripts() {
        let weight = Symbol::new("W_1⊥");
        for typed in ["W1perp", "w_1_perp", "W_{1}⊥", "w₁⊥", "W1 perp"] {
            assert!(weight.matches(typed), "{typed}");
        }
        assert!(!weight.matches("W1"));
        assert!(Symbol::new("θ").matches("Theta"));
        assert_eq!(Symbol::new("W_1⊥").typed(), "W1perp");
        assert!(Symbol::new("x\u{304}").matches("xbar") && Symbol::new("ȳ").matches("ybar"));
        assert_eq!(Symbol::new("W∥").typed(), "Wpar");
        for (shown, typed) in [
            ("ℓ_1", "ell1"),
            ("λ", "lambda"),
            ("Θ", "theta"),
            ("σ", "sigma"),
            ("Σ", "sum"),
        ] {
            assert_eq!(Symbol::new(shown).typed(), typed);
            assert!(Symbol::new(shown).matches(typed), "{shown}");
        }
        let second = Symbol::new("T_y′");
        assert!(second.matches("Ty'") && second.matches("Ty’") && !second.matches("Ty"));
        assert_eq!(second.typed(), "Ty'");
    }
}
