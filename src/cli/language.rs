//! The language of the surroundings.

use crate::text::Language;

/// The environment variable that names one for this program.
const VARIABLE: &str = "LEVERWRIGHT_LANGUAGE";
/// The variables of the system, the first that is set counts.
const SYSTEM: [&str; 3] = ["LC_ALL", "LC_MESSAGES", "LANG"];

/// The language named for this program, else that of the system, else English.
pub(super) fn of_surroundings() -> Language {
    let set = |name: &str| std::env::var(name).ok().filter(|value| !value.is_empty());
    let named = set(VARIABLE).and_then(|named| Language::of_locale(&named));
    let of_system = || Language::of_locale(&SYSTEM.iter().find_map(|name| set(name))?);
    named.or_else(of_system).unwrap_or_default()
}
