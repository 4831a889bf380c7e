//! Ids for folders and files: letters, digits and hyphens, nothing else.

use std::collections::hash_map::RandomState;
use std::hash::{BuildHasher, Hasher};
use std::time::{SystemTime, UNIX_EPOCH};

/// Twelve random hexadecimal digits. The keys of `RandomState` come from the operating system;
/// time and process are hashed with them, as the keys only count up within a thread. Good enough
/// against accidents, not against attackers; a collision is refused when the file is made.
pub(super) fn random() -> String {
    let mut hasher = RandomState::new().build_hasher();
    let since = SystemTime::now().duration_since(UNIX_EPOCH);
    hasher.write_u128(since.map_or(0, |since| since.as_nanos()));
    hasher.write_u32(std::process::id());
    format!("{:012x}", hasher.finish() & 0xFFFF_FFFF_FFFF)
}

/// An id for a sitting: the day, for people who look into the folder, and random digits.
pub(super) fn of_sitting(now: &str) -> String {
    let is_date = |day: &&str| {
        day.chars()
            .enumerate()
            .all(|(place, character)| match place {
                4 | 7 => character == '-',
                _ => character.is_ascii_digit(),
            })
    };
    match now.get(..10).filter(is_date) {
        Some(day) => format!("{day}-{}", random()),
        None => random(),
    }
}

/// True if the name of a folder may be an id: it can never lead out of the saves folder.
pub(super) fn is_id(name: &str) -> bool {
    !name.is_empty()
        && name.len() <= 64
        && name
            .bytes()
            .all(|byte| byte.is_ascii_alphanumeric() || byte == b'-')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn verif_ids_differ_and_are_safe_names() {
        let ids: std::collections::BTreeSet<String> = (0..1000).map(|_| random()).collect();
        assert_eq!(ids.len(), 1000);
        assert!(ids.iter().all(|id| is_id(id)));
        assert!(of_sitting("2026-11-25T09:00:00Z").starts_with("2026-11-25-"));
        for odd in ["", "../../../etc", "2026/11/25", "éééééééé"] {
            assert_eq!(of_sitting(odd).len(), 12, "{odd}");
        }
        for odd in ["", "..", "a/b", "a\\b", "ä", "a.json", " "] {
            assert!(!is_id(odd), "{odd}");
        }
    }
}
