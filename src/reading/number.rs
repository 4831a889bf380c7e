//! Numbers as learners type them: `96.3`, `96,3`, `1,500`, `1.2e3`, `1.2×10³`, `2½`.

use super::signs::{blanks, fraction, is_blank, is_minus, is_number_space, is_times, lowered};

/// How a comma in a number was understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Comma {
    None,
    Decimal,
    Thousands,
    /// `1,500`: both are possible; which was taken.
    Either {
        decimal: bool,
    },
}

/// A number found at the start of a text.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Found {
    /// Bytes taken.
    pub(super) length: usize,
    /// With a decimal point, without separators.
    pub(super) digits: String,
    pub(super) value: f64,
    pub(super) comma: Comma,
    /// A fraction sign belongs to it, so it is exact.
    pub(super) fraction: bool,
}

/// The number at the start of `text`, if one stands there. `decimal` decides `1,500`;
/// `powers` allows a power of ten to be part of the number.
pub(super) fn number_at(text: &str, decimal: bool, powers: bool) -> Option<Found> {
    let first = text.chars().next()?;
    if let Some(value) = fraction(first) {
        return Some(Found {
            length: first.len_utf8(),
            digits: first.to_string(),
            value,
            comma: Comma::None,
            fraction: true,
        });
    }
    let groups = groups_at(text);
    let (mut digits, mut length, comma) = plain(&groups, decimal)?;
    if let Some(sign) = text[length..].chars().next()
        && let (Some(part), Ok(whole)) = (fraction(sign), digits.parse::<f64>())
    {
        return Some(Found {
            length: length + sign.len_utf8(),
            digits: format!("{digits}{sign}"),
            value: whole + part,
            comma,
            fraction: true,
        });
    }
    let power = exponent(&text[length..])
        .or_else(|| powers.then(|| power_of_ten(&text[length..])).flatten());
    if let Some((taken, exponent)) = power {
        length += taken;
        digits = format!("{digits}e{exponent}");
    }
    let value = digits.parse().ok()?;
    Some(Found {
        length,
        digits,
        value,
        comma,
        fraction: false,
    })
}

/// Digits between separators: the separator before (none for the first), the digits, the end.
struct Group {
    separator: Option<char>,
    digits: String,
    end: usize,
}

fn groups_at(text: &str) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    let mut at = 0;
    loop {
        let separator = text[at..].chars().next().filter(|c| matches!(c, '.' | ','));
        let from = at + separator.map_or(0, char::len_utf8);
        let (digits, end) = digits_from(text, from);
        let missing = digits.is_empty();
        // `.5` begins with its point, nothing begins with a comma.
        let first = groups.is_empty();
        if missing || (first && separator == Some(',')) || (!first && separator.is_none()) {
            return groups;
        }
        groups.push(Group {
            separator,
            digits,
            end,
        });
        at = end;
    }
}

/// Digits, with what separates groups of three left out: thin spaces of typesetters, an
/// apostrophe, and a space where the group before it may be a first one (`1 430`).
fn digits_from(text: &str, from: usize) -> (String, usize) {
    let mut digits = String::new();
    let mut at = from;
    while let Some(c) = text[at..].chars().next() {
        let after = at + c.len_utf8();
        let three = || {
            let next = text[after..].chars().take_while(char::is_ascii_digit);
            next.count() == 3
        };
        if c.is_ascii_digit() {
            digits.push(c);
        } else if !(separates(c, &digits) && three()) {
            break;
        }
        at = after;
    }
    (digits, at)
}

/// True if a character may stand between groups of three digits.
fn separates(c: char, digits: &str) -> bool {
    let first = (1..=3).contains(&digits.len()) && !digits.starts_with('0');
    match c {
        c if is_number_space(c) => !digits.is_empty(),
        '\'' | '’' => !digits.is_empty(),
        ' ' => first || digits.len() > 3 && digits.len().is_multiple_of(3),
        _ => false,
    }
}

/// The digits, bytes taken and meaning of the comma of a plain number.
fn plain(groups: &[Group], decimal: bool) -> Option<(String, usize, Comma)> {
    let first = groups.first()?;
    if first.separator.is_some() {
        return Some((format!("0.{}", first.digits), first.end, Comma::None));
    }
    let whole = |groups: &[Group]| {
        groups
            .iter()
            .map(|group| &*group.digits)
            .collect::<String>()
    };
    let threes = |groups: &[Group]| {
        first.digits.len() <= 3 && groups.iter().skip(1).all(|group| group.digits.len() == 3)
    };
    let separators: String = groups.iter().filter_map(|group| group.separator).collect();
    let last = groups.last()?;
    let all_but_last = &groups[..groups.len() - 1];
    let with_decimals = || format!("{}.{}", whole(all_but_last), last.digits);
    let same = |sign: char| separators.chars().all(|c| c == sign);
    let marks_thousands = |sign: char, point: char| {
        separators.len() > 1
            && separators.ends_with(point)
            && separators.chars().rev().skip(1).all(|c| c == sign)
            && threes(all_but_last)
    };
    if separators.is_empty() {
        return Some((first.digits.clone(), first.end, Comma::None));
    }
    if separators == "." {
        return Some((with_decimals(), last.end, Comma::None));
    }
    if separators == "," {
        let both = threes(groups) && !first.digits.starts_with('0');
        return Some(match (both, decimal) {
            (true, false) => (whole(groups), last.end, Comma::Either { decimal: false }),
            (true, true) => (with_decimals(), last.end, Comma::Either { decimal: true }),
            (false, _) => (with_decimals(), last.end, Comma::Decimal),
        });
    }
    if same(',') && threes(groups) {
        return Some((whole(groups), last.end, Comma::Thousands));
    }
    if marks_thousands(',', '.') {
        return Some((with_decimals(), last.end, Comma::Thousands));
    }
    if marks_thousands('.', ',') {
        return Some((with_decimals(), last.end, Comma::Decimal));
    }
    // No number has these separators: take what can be read, the rest is told as unexpected.
    plain(&groups[..2], decimal).or_else(|| plain(&groups[..1], decimal))
}

/// `e3`, `E-3` directly after the digits.
fn exponent(text: &str) -> Option<(usize, String)> {
    let rest = text.strip_prefix(['e', 'E'])?;
    let (length, exponent) = signed_digits(rest, |c| c.is_ascii_digit().then_some(c))?;
    let next = rest[length..].chars().next();
    if next.is_some_and(|c| c.is_alphanumeric() || c == '_') {
        return None;
    }
    Some((1 + length, exponent))
}

/// `×10³`, `*10^3`, ` x 10^-3`, `·10^(−3)` after the digits.
fn power_of_ten(text: &str) -> Option<(usize, String)> {
    let mut at = blanks(text);
    let sign = text[at..].chars().next()?;
    if !(is_times(sign) || matches!(sign, 'x' | 'X')) || text[at..].starts_with("**") {
        return None;
    }
    at += sign.len_utf8();
    at += blanks(&text[at..]);
    let rest = text[at..].strip_prefix("10")?;
    at += 2;
    if let Some((length, exponent)) = signed_digits(rest, lowered) {
        return Some((at + length, exponent));
    }
    let caret = if rest.starts_with('^') { 1 } else { 2 };
    if caret == 2 && !rest.starts_with("**") {
        return None;
    }
    let rest = &rest[caret..];
    at += caret;
    let bracket = rest.starts_with('(');
    let inner = &rest[usize::from(bracket)..];
    let (length, exponent) = signed_digits(inner, |c| c.is_ascii_digit().then_some(c))?;
    let after = inner[length..].trim_start_matches(is_blank);
    let closed = !bracket || inner[length..].starts_with(')');
    // 10^0.5 and 10^3^2 are powers of their own.
    let goes_on = after.starts_with(['^', '.', ',']) || after.starts_with("**");
    if !closed || (!bracket && goes_on) {
        return None;
    }
    Some((at + length + 2 * usize::from(bracket), exponent))
}

/// A sign and up to three digits.
fn signed_digits(text: &str, digit: impl Fn(char) -> Option<char>) -> Option<(usize, String)> {
    let mut exponent = String::new();
    let mut length = 0;
    for c in text.chars() {
        match digit(c) {
            Some('-') if length == 0 => exponent.push('-'),
            Some(c) if c.is_ascii_digit() => exponent.push(c),
            None if length == 0 && is_minus(c) => exponent.push('-'),
            None if length == 0 && c == '+' => {}
            _ => break,
        }
        length += c.len_utf8();
    }
    let count = exponent.trim_start_matches('-').len();
    (1..=3).contains(&count).then_some((length, exponent))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn numbers_of_all_habits() {
        for (text, digits, rest) in [
            ("96.3 N", "96.3", " N"),
            (".5", "0.5", ""),
            ("96,3", "96.3", ""),
            ("0,500", "0.500", ""),
            ("1,500", "1500", ""),
            ("1,234,567", "1234567", ""),
            ("1,234.5", "1234.5", ""),
            ("1.234,5", "1234.5", ""),
            ("1\u{202f}500", "1500", ""),
            ("12\u{a0}9.8", "12", "\u{a0}9.8"),
            ("12.9.8", "12.9", ".8"),
            ("12, 5", "12", ", 5"),
            ("1.2e3", "1.2e3", ""),
            ("1.2E-3*", "1.2e-3", "*"),
            ("2e", "2", "e"),
            ("1.2*10^3", "1.2e3", ""),
            ("1.2 × 10³ N", "1.2e3", " N"),
            ("1.2x10^-3", "1.2e-3", ""),
            ("1.2·10^(−3)", "1.2e-3", ""),
            ("2*10^0.5", "2", "*10^0.5"),
            ("2*100", "2", "*100"),
            ("½", "½", ""),
            ("2½", "2½", ""),
        ] {
            let found = number_at(text, false, true).unwrap();
            assert_eq!(
                (found.digits.as_str(), &text[found.length..]),
                (digits, rest),
                "{text}"
            );
        }
        assert_eq!(number_at("1,500", true, true).unwrap().value, 1.5);
        assert_eq!(number_at("x", false, true), None);
        assert_eq!(number_at(",5", false, true), None);
    }
}
