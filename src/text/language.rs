//! The languages that are built in: each a file of words.

/// Each language: its tag, the key of its name, and its words.
const BUILT_IN: &[(&str, &str, &str)] = &[
    ("en", "settings.language.en", include_str!("words/en.json")),
    ("de", "settings.language.de", include_str!("words/de.json")),
];

/// A language that is built in. The default is English, which has every word.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Language(usize);

impl Language {
    /// All of them, English first.
    pub fn all() -> impl Iterator<Item = Language> {
        (0..BUILT_IN.len()).map(Language)
    }

    /// The language with this tag, such as `de`.
    pub fn tagged(tag: &str) -> Option<Language> {
        Language::all().find(|language| language.tag().eq_ignore_ascii_case(tag.trim()))
    }

    /// The language of a locale, such as `de_DE.UTF-8`.
    pub fn of_locale(locale: &str) -> Option<Language> {
        let tag = locale.split(['_', '-', '.', '@']).next()?;
        Language::tagged(tag)
    }

    /// Its tag, such as `de`.
    pub fn tag(self) -> &'static str {
        BUILT_IN[self.0].0
    }

    /// The key of its name, as its own speakers say it.
    pub fn name_key(self) -> &'static str {
        BUILT_IN[self.0].1
    }

    /// Its words as a JSON object.
    pub(super) fn json(self) -> &'static str {
        BUILT_IN[self.0].2
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_locale_begins_with_its_language() {
        for (locale, tag) in [
            ("de_DE.UTF-8", Some("de")),
            ("de", Some("de")),
            ("de-AT", Some("de")),
            ("DE@euro", Some("de")),
            ("en_GB.UTF-8", Some("en")),
            ("C.UTF-8", None),
            ("POSIX", None),
            ("den_XX", None),
            ("", None),
        ] {
            let found = Language::of_locale(locale).map(Language::tag);
            assert_eq!(found, tag, "{locale}");
        }
    }
}
