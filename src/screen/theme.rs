//! How meanings look: colours, signs and characters. Colour never carries a meaning alone: every
//! verdict has a sign and a word, every stroke of the diagram its label.
//!
//! # Source
//! The colours are those that Masataka Okabe and Kei Ito published for colour-blind readers
//! ("Color Universal Design: how to make figures and presentations that are friendly to
//! colorblind people", 2002, revised 2008; values from memory). Of their eight, only the four
//! that stand out on black and on white alike are used for text, since a program cannot know
//! what a terminal's background is.

use crate::session::Sign;
use crate::sketch::{Ink, spelled};
use crate::text::Tag;
use ratatui::style::{Color, Modifier, Style};
use std::borrow::Cow;

/// How many colours a terminal has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Depth {
    /// None: bold, dim and underlined only.
    None,
    /// The sixteen that a terminal's own settings choose.
    Sixteen,
    /// Red, green and blue freely.
    Full,
}

/// How meanings look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Theme {
    /// Colours.
    pub(super) depth: Depth,
    /// True if more than ASCII may be shown.
    pub(super) unicode: bool,
}

/// A colour of the palette: red, green and blue, and the nearest of the sixteen.
type Paint = ((u8, u8, u8), Color);

const BLUISH_GREEN: Paint = ((0x00, 0x9e, 0x73), Color::Cyan);
const VERMILLION: Paint = ((0xd5, 0x5e, 0x00), Color::Red);
const BLUE: Paint = ((0x00, 0x72, 0xb2), Color::LightBlue);
const REDDISH_PURPLE: Paint = ((0xcc, 0x79, 0xa7), Color::Magenta);

impl Theme {
    /// What the surroundings allow: `NO_COLOR`, `COLORTERM`, and the first of `LC_ALL`,
    /// `LC_CTYPE` and `LANG` that is set. `variable` gives the value of one of them.
    pub(super) fn of(variable: impl Fn(&str) -> Option<String>) -> Theme {
        let set = |name: &str| variable(name).filter(|value| !value.is_empty());
        let full = set("COLORTERM").is_some_and(|value| {
            value.eq_ignore_ascii_case("truecolor") || value.eq_ignore_ascii_case("24bit")
        });
        let depth = match (set("NO_COLOR"), full) {
            (Some(_), _) => Depth::None,
            (None, true) => Depth::Full,
            (None, false) => Depth::Sixteen,
        };
        let locale = set("LC_ALL")
            .or_else(|| set("LC_CTYPE"))
            .or_else(|| set("LANG"))
            .unwrap_or_default()
            .to_lowercase();
        Theme {
            depth,
            unicode: cfg!(windows) || locale.contains("utf-8") || locale.contains("utf8"),
        }
    }

    fn paint(self, paint: Paint) -> Style {
        let ((red, green, blue), nearest) = paint;
        match self.depth {
            Depth::None => Style::new(),
            Depth::Sixteen => Style::new().fg(nearest),
            Depth::Full => Style::new().fg(Color::Rgb(red, green, blue)),
        }
    }

    /// Words that may be passed over.
    pub(super) fn faint(self) -> Style {
        Style::new().add_modifier(Modifier::DIM)
    }

    /// Words that carry.
    pub(super) fn strong(self) -> Style {
        Style::new().add_modifier(Modifier::BOLD)
    }

    /// Something to press.
    pub(super) fn key(self) -> Style {
        self.paint(BLUE).add_modifier(Modifier::BOLD)
    }

    /// What is chosen in a list.
    pub(super) fn chosen(self) -> Style {
        Style::new().add_modifier(Modifier::BOLD | Modifier::REVERSED)
    }

    /// The mark before a note.
    pub(super) fn note(self) -> Style {
        self.paint(REDDISH_PURPLE).add_modifier(Modifier::BOLD)
    }

    /// The mark before a hint.
    pub(super) fn hint(self) -> Style {
        self.paint(BLUE).add_modifier(Modifier::BOLD)
    }

    /// The caret under what was not understood.
    pub(super) fn caret(self) -> Style {
        self.paint(VERMILLION).add_modifier(Modifier::BOLD)
    }

    /// A verdict.
    pub(super) fn verdict(self, sign: Sign) -> Style {
        match sign {
            Sign::Right | Sign::Rounded => self.paint(BLUISH_GREEN),
            Sign::Follows | Sign::Noted => self.paint(BLUE),
            Sign::Incomplete => self.paint(REDDISH_PURPLE),
            Sign::Wrong => self.paint(VERMILLION),
            Sign::Unclear | Sign::Shown => Style::new(),
            Sign::Talk => return self.faint(),
        }
        .add_modifier(Modifier::BOLD)
    }

    /// The sign of a verdict, one column wide.
    pub(super) fn sign(self, sign: Sign) -> &'static str {
        let (fine, ascii) = match sign {
            Sign::Right => ("✓", "+"),
            Sign::Rounded => ("≈", "~"),
            Sign::Follows => ("↳", ">"),
            Sign::Noted => ("•", "*"),
            Sign::Incomplete => ("◐", "%"),
            Sign::Wrong => ("✗", "x"),
            Sign::Unclear => ("?", "?"),
            Sign::Shown => ("○", "o"),
            Sign::Talk => ("›", "-"),
        };
        self.either(fine, ascii)
    }

    /// A piece of prose.
    pub(super) fn tag(self, tag: Tag) -> Style {
        match tag {
            Tag::Plain => Style::new(),
            Tag::Name | Tag::Value | Tag::Strong => self.strong(),
            Tag::Key => self.key(),
        }
    }

    /// A cell of the diagram.
    pub(super) fn ink(self, ink: Ink) -> Style {
        match ink {
            Ink::Blank | Ink::Angle => Style::new(),
            Ink::Body | Ink::Pivot | Ink::Label => self.strong(),
            Ink::Ground | Ink::Distance | Ink::Faint => self.faint(),
            Ink::Rope => self.paint(BLUISH_GREEN),
            Ink::Weight | Ink::Load => self.paint(BLUE),
            Ink::Support => self.paint(VERMILLION),
            Ink::Component => self.paint(REDDISH_PURPLE),
            Ink::Lit => self.paint(VERMILLION).add_modifier(Modifier::BOLD),
        }
    }

    /// One text or the other, by what may be shown.
    pub(super) fn either(self, fine: &'static str, ascii: &'static str) -> &'static str {
        if self.unicode { fine } else { ascii }
    }

    /// A text as it may be shown: letters beyond ASCII are spelled out where they must be.
    pub(super) fn letters(self, text: &str) -> Cow<'_, str> {
        if self.unicode || text.is_ascii() {
            Cow::Borrowed(text)
        } else {
            Cow::Owned(spelled(text))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn theme(set: &[(&str, &str)]) -> Theme {
        Theme::of(|name| {
            set.iter()
                .find(|(known, _)| *known == name)
                .map(|(_, value)| (*value).to_owned())
        })
    }

    #[test]
    fn surroundings_decide() {
        for (set, depth, unicode) in [
            (&[][..], Depth::Sixteen, false),
            (&[("LANG", "en_GB.UTF-8")], Depth::Sixteen, true),
            (
                &[("LANG", "en_GB.UTF-8"), ("LC_ALL", "C")],
                Depth::Sixteen,
                false,
            ),
            (
                &[("LC_CTYPE", "C.utf8"), ("LC_ALL", "")],
                Depth::Sixteen,
                true,
            ),
            (&[("COLORTERM", "truecolor")], Depth::Full, false),
            (
                &[("COLORTERM", "truecolor"), ("NO_COLOR", "1")],
                Depth::None,
                false,
            ),
            (&[("NO_COLOR", "")], Depth::Sixteen, false),
        ] {
            let theme = theme(set);
            assert_eq!(theme.depth, depth, "{set:?}");
            assert_eq!(theme.unicode, unicode || cfg!(windows), "{set:?}");
        }
    }

    /// Contrast by the Web Content Accessibility Guidelines 2.1, "relative luminance" and
    /// "contrast ratio" (from memory): at least 3 to 1 for large or bold text.
    #[test]
    fn val_every_text_colour_stands_out_on_black_and_on_white() {
        let linear = |part: u8| {
            let part = f64::from(part) / 255.0;
            if part <= 0.03928 {
                part / 12.92
            } else {
                ((part + 0.055) / 1.055).powf(2.4)
            }
        };
        for ((red, green, blue), _) in [BLUISH_GREEN, VERMILLION, BLUE, REDDISH_PURPLE] {
            let light = 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
            let (on_black, on_white) = ((light + 0.05) / 0.05, 1.05 / (light + 0.05));
            assert!(on_black >= 3.0 && on_white >= 3.0, "{on_black} {on_white}");
        }
    }

    #[test]
    fn without_colour_nothing_is_coloured_and_signs_differ() {
        let signs = [
            Sign::Right,
            Sign::Rounded,
            Sign::Follows,
            Sign::Noted,
            Sign::Incomplete,
            Sign::Wrong,
            Sign::Unclear,
            Sign::Shown,
            Sign::Talk,
        ];
        for unicode in [false, true] {
            let theme = Theme {
                depth: Depth::None,
                unicode,
            };
            for (place, sign) in signs.iter().enumerate() {
                assert_eq!(theme.verdict(*sign).fg, None);
                assert!(
                    signs[..place]
                        .iter()
                        .all(|other| theme.sign(*other) != theme.sign(*sign))
                );
            }
        }
    }
}
