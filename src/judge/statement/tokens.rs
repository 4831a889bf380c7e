//! A line as tokens, and how tokens are compared with known words.

/// In small letters, with umlauts as keyboards without them write them.
pub(super) fn folded(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for c in text.to_lowercase().chars() {
        match c {
            'ä' => folded.push_str("ae"),
            'ö' => folded.push_str("oe"),
            'ü' => folded.push_str("ue"),
            'ß' => folded.push_str("ss"),
            c => folded.push(c),
        }
    }
    folded
}

/// The tokens of a line, in lower case. Signs that say something become words of their own.
pub(super) fn tokens(line: &str) -> Vec<String> {
    let letters: Vec<char> = folded(line)
        .replace("->", " → ")
        .replace("<-", " ← ")
        .chars()
        .filter(|c| !matches!(c, '\'' | '\u{2019}'))
        .collect();
    let digit = |index: Option<usize>| {
        index
            .and_then(|index| letters.get(index))
            .is_some_and(char::is_ascii_digit)
    };
    let letter = |index: Option<usize>| {
        index
            .and_then(|index| letters.get(index))
            .is_some_and(|c| c.is_alphabetic())
    };
    let mut text = String::new();
    for (index, c) in letters.iter().copied().enumerate() {
        let number = digit(index.checked_sub(1)) && digit(Some(index + 1));
        let before_digit = digit(Some(index + 1));
        match c {
            // "1) … 2) …" numbers a list.
            c if c.is_ascii_digit() && numbers_a_list(&letters, index) => text.push(','),
            // A decimal comma is a point; every other comma parts words.
            ',' if number => text.push('.'),
            '.' if before_digit => text.push('.'),
            // "C.o.m." is one word.
            '.' if is_initial(&letters, index) => {}
            '|' => text.push_str(" , "),
            // "Dummy/tip/down", but "L/2".
            '/' if letter(index.checked_sub(1)) && letter(Some(index + 1)) => text.push_str(" , "),
            '/' | '_' => text.push(c),
            // "At -1 m": a coordinate; elsewhere such a sign parts words.
            '-' | '−' if before_digit && takes_a_coordinate(&text) => text.push('-'),
            // "-x", "+y": a sense of an axis.
            '-' | '−' | '+' if names_an_axis(&letters, index) => {
                text.push(' ');
                text.push(if c == '+' { '+' } else { '-' });
            }
            // "180° - 40°".
            '-' | '−' if text.trim_end().ends_with('°') => text.push_str(" − "),
            ',' | ';' | '.' | '&' | '+' | ':' | '°' | '↑' | '↓' | '←' | '→' => {
                text.push(' ');
                text.push(c);
                text.push(' ');
            }
            '↗' => text.push_str(" ↑ → "),
            '↖' => text.push_str(" ↑ ← "),
            '↘' => text.push_str(" ↓ → "),
            '↙' => text.push_str(" ↓ ← "),
            // A question mark that stands alone is an answer: not known.
            '?' if index > 0 && letters[index - 1].is_whitespace() => text.push_str(" ? "),
            '\n' => text.push_str(" ; "),
            c if c.is_alphanumeric() => text.push(c),
            _ => text.push(' '),
        }
    }
    let sign = |token: &str| match token {
        "," | ":" => ",".to_owned(),
        "." | ";" => ";".to_owned(),
        token => token.to_owned(),
    };
    let all: Vec<String> = text.split_whitespace().map(sign).collect();
    let sentences = all.split(|token| token == ";").map(parted_by_arrows);
    let sentences: Vec<Vec<String>> = sentences.collect();
    sentences.join(&";".to_owned())
}

/// "Weight of the mast → middle → down": arrows that part, where there are several, and point
/// nowhere.
fn parted_by_arrows(sentence: &[String]) -> Vec<String> {
    let arrow = |token: &&String| *token == "→";
    let parts = sentence.iter().filter(arrow).count() > 1;
    let kept = |token: &String| match token.as_str() {
        "→" if parts => ",".to_owned(),
        _ => token.clone(),
    };
    sentence.iter().map(kept).collect()
}

/// True for a sign right before the letter of an axis, which stands alone, and after no word.
fn names_an_axis(letters: &[char], sign: usize) -> bool {
    let axis = matches!(letters.get(sign + 1), Some('x' | 'y'));
    let after = letters.get(sign + 2);
    let before = sign.checked_sub(1).and_then(|at| letters.get(at));
    axis && after.is_none_or(|c| !c.is_alphanumeric() && *c != '_')
        && before.is_none_or(|c| !c.is_alphanumeric())
}

/// True where a number with a minus sign is a coordinate: at the start, after "at" or a comma.
fn takes_a_coordinate(before: &str) -> bool {
    let last = before.split_whitespace().last();
    last.is_none_or(|last| matches!(last, "at" | "x" | ","))
}

/// True for a dot after a single letter that has another such letter beside it.
fn is_initial(letters: &[char], dot: usize) -> bool {
    let letter = |at: Option<usize>| {
        at.and_then(|at| letters.get(at))
            .is_some_and(|c| c.is_alphabetic())
    };
    // The letter stands alone: what is two places before the dot is no letter.
    let single = letter(dot.checked_sub(1)) && !letter(dot.checked_sub(2));
    let dotted = |at: Option<usize>| at.and_then(|at| letters.get(at)) == Some(&'.');
    let next = letter(Some(dot + 1)) && !letter(Some(dot + 2));
    single && (next || dotted(dot.checked_sub(2)))
}

/// True for a single digit before a closing bracket that closes nothing.
fn numbers_a_list(letters: &[char], index: usize) -> bool {
    let first = index == 0 || letters[index - 1].is_whitespace();
    first && letters.get(index + 1) == Some(&')') && !letters[..index].contains(&'(')
}

/// A number, or one number divided by another.
pub(super) fn quotient(text: &str) -> Option<f64> {
    let number = match text.split_once('/') {
        None => text.parse::<f64>().ok()?,
        Some((over, under)) => over.parse::<f64>().ok()? / under.parse::<f64>().ok()?,
    };
    number.is_finite().then_some(number)
}

/// True if the tokens begin with this phrase; a plural or a singular counts as the same word.
pub(super) fn starts_with(tokens: &[String], phrase: &[String]) -> bool {
    phrase.len() <= tokens.len()
        && phrase
            .iter()
            .zip(tokens)
            .all(|(word, token)| close(token, word))
}

fn close(token: &str, word: &str) -> bool {
    // "F_g" is "Fg".
    if token.contains('_') {
        return token.replace('_', "") == word;
    }
    let long = word.chars().count() > 2;
    token == word
        || long && (token.strip_suffix('s') == Some(word) || word.strip_suffix('s') == Some(token))
}

/// True if `one` is `other` with one letter left out.
pub(super) fn one_letter_short(one: &str, other: &str) -> bool {
    one.chars().count() + 1 == other.chars().count() && one_letter_off(one, other)
}

/// True if one letter is missing, too many, another, or exchanged with its neighbour.
pub fn one_letter_off(one: &str, other: &str) -> bool {
    let (one, other): (Vec<char>, Vec<char>) = (one.chars().collect(), other.chars().collect());
    let same = one.iter().zip(&other).take_while(|(a, b)| a == b).count();
    let (one, other) = (&one[same..], &other[same..]);
    match (one, other) {
        ([a, b, rest @ ..], [c, d, tail @ ..]) if a == d && b == c && rest == tail => true,
        ([_, rest @ ..], [_, tail @ ..]) if rest == tail => true,
        ([_, rest @ ..], tail) if rest == tail => true,
        (rest, [_, tail @ ..]) => rest == tail,
        _ => false,
    }
}
