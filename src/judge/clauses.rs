//! A line of several statements: `236·3.1 + 405·4 = T·sin 80·6.2 ⇒ T = 385`. Each is judged by
//! itself, in order; all of them must hold.

use super::board::{Board, Memo, Own};
use super::{Aside, Evidence, Judgement, Remark, Truth, judge_line};
use crate::key::StepId;
use crate::text::{Span, Symbol, Words};
use std::sync::LazyLock;

/// Signs and words between two statements. A word stands between blanks.
const BETWEEN: &[&str] = &["=>", "->", "⇒", "⟹", "→", "∴", ";", ", "];
/// Those that say of the second that it follows from the first.
const FOLLOWS: &[&str] = &["=>", "->", "⇒", "⟹", "→", "∴"];

/// The same in words, each with whether the second follows from the first: `so`, `and`.
fn between_words() -> &'static [(String, bool)] {
    static WORDS: LazyLock<Vec<(String, bool)>> = LazyLock::new(|| {
        let list = |key: &str, follows: bool| {
            let words = Words::listed(key).into_iter();
            words.map(move |word| (format!(" {word} "), follows))
        };
        let follows = list("judge.follows", true);
        follows.chain(list("judge.between", false)).collect()
    });
    &WORDS
}

/// What follows from a balance may be off by this share of what that gives, by rounding.
const CONCLUDED: f64 = 0.01;

/// Judges a line of several statements; `None` where it is one, or where they are not to be told
/// apart.
pub(super) fn judge(
    board: &Board<'_>,
    asked: StepId,
    line: &str,
    number: usize,
) -> Option<Judgement> {
    let (first, second) = parts(line)?;
    let next = said_next(board);
    if let Some(named) = with_angle_named(
        &line[..first.end],
        &line[first.end..second.start],
        &line[second.start..],
    ) {
        return judge(board, asked, &named, number);
    }
    if is_only_sum(&line[first.start..first.end]) {
        let rest = &line[second.start..second.end];
        return Some(placed(
            judge(&next, asked, rest, number)
                .unwrap_or_else(|| judge_line(&next, asked, rest, number)),
            second,
        ));
    }
    let mut head = judge_line(board, asked, &line[first.start..first.end], number);
    let unread = matches!(head.truth, Truth::NotUnderstood(_) | Truth::Mismatched(_));
    let concludes = is_balance(board, &head);
    let bare = !has_equals(&line[second.start..second.end]);
    // `T = 2351/6.11 => 385` is a chain, unless its sign is none of a chain.
    let chain = || {
        let whole = judge_line(board, asked, line, number);
        !head.truth.holds() || !matches!(whole.truth, Truth::NotUnderstood(_))
    };
    if unread || head.names.is_none() && bare && !concludes && chain() {
        return None;
    }
    if head.names.is_some() {
        return after_own_name(board, asked, head, (line, second, number));
    }
    // What is true of known numbers is no attempt, and the others stand beside it.
    if head.evidence.aside == Some(Aside::True) {
        head.truth = Truth::Noted;
    }
    if !head.truth.holds() && head.truth != Truth::Noted {
        return Some(placed(head, first));
    }
    let mut standing = board.standing.clone();
    standing.extend(head.values.iter().cloned());
    let after = Board {
        standing: &standing,
        memo: Memo::default(),
        ..next
    };
    let asked = match board.unknown() {
        Some(unknown) if concludes => unknown,
        _ if bare => head.target,
        _ => asked,
    };
    let rest = &line[second.start..second.end];
    let tail = judge(&after, asked, rest, number)
        .unwrap_or_else(|| judge_line(&after, asked, rest, number));
    if matches!(tail.truth, Truth::NotUnderstood(_)) {
        return None;
    }
    let text = (&line[first.start..first.end], number);
    if let Some(head) = refused_since(&after, &head, &tail, text) {
        return Some(placed(head, first));
    }
    if is_not_concluded(board, &head, &tail) {
        return Some(placed(not_concluded(tail), second));
    }
    Some(joined(head, placed(tail, second)))
}

/// The board of the statements after the first, with the body that was said with them.
fn said_next<'a>(board: &Board<'a>) -> Board<'a> {
    let next = board.on_next.split_first();
    Board {
        on_body: next.map_or(board.on_body, |(body, _)| Some(body)),
        on_next: next.map_or(&[], |(_, rest)| rest),
        memo: Memo::default(),
        ..*board
    }
}

/// The statements of a line, in order.
pub(crate) fn statements(line: &str) -> Vec<Span> {
    let mut found = Vec::new();
    let mut from = 0;
    while let Some((first, second)) = parts(&line[from..]) {
        found.push(Span::new(from, from + first.end));
        from += second.start;
    }
    found.push(Span::new(from, line.len()));
    found
}

/// True for a balance that stands: where the unknown is asked it is noted there.
fn is_balance(board: &Board<'_>, head: &Judgement) -> bool {
    let noted = head.truth == Truth::Noted && head.proved && head.remarks.is_empty();
    let of_unknown = Some(head.target) == board.unknown() && head.target.is_pull();
    head.truth.holds() && head.target == StepId::MomentSum || noted && of_unknown
}

/// True if a right unknown is told behind a balance that rests on wrong values of hers and
/// gives another.
fn is_not_concluded(board: &Board<'_>, head: &Judgement, tail: &Judgement) -> bool {
    let right = matches!(tail.truth, Truth::Holds | Truth::HoldsRounded);
    let root = head.evidence.own_root;
    let told = tail
        .values
        .iter()
        .find(|(step, _)| Some(*step) == board.unknown());
    let apart = |(root, (_, own)): (f64, &(StepId, Own))| {
        (own.value.abs() - root.abs()).abs() > CONCLUDED * root.abs()
    };
    right && root.zip(told).is_some_and(apart)
}

/// The last statement as what it is there: no conclusion.
fn not_concluded(mut tail: Judgement) -> Judgement {
    tail.truth = Truth::DoesNotHold;
    tail.proved = false;
    tail.values.clear();
    tail.establishes.clear();
    tail.remarks.clear();
    tail.evidence = Evidence {
        not_concluded: true,
        ..Evidence::default()
    };
    tail
}

/// `M = 1481.8 => T = 696`: a name of her own, and what is concluded, perhaps by that name.
fn after_own_name(
    board: &Board<'_>,
    asked: StepId,
    mut head: Judgement,
    (line, second, number): (&str, Span, usize),
) -> Option<Judgement> {
    let rest = &line[second.start..second.end];
    let defined = head.names.clone()?;
    let (name, own) = &defined;
    let names = board.names.with_own(
        &Symbol::new(name.clone()),
        own.dimension,
        board.own_names.len(),
    );
    let mut own_names = board.own_names.to_vec();
    own_names.push(own.clone());
    let with = Board {
        names: &names,
        own_names: &own_names,
        memo: Memo::default(),
        ..said_next(board)
    };
    let mut tail =
        judge(&with, asked, rest, number).unwrap_or_else(|| judge_line(&with, asked, rest, number));
    let read = match tail.truth {
        Truth::NotUnderstood(_) | Truth::Mismatched(_) => false,
        Truth::Noted => tail.proved || tail.names.is_some(),
        _ => true,
    };
    if !has_equals(rest) || !read {
        return None;
    }
    tail.layout = Some(layouts(&mut head, &mut tail));
    tail.value = None;
    tail.names_before.insert(0, defined);
    Some(match tail.truth.holds() {
        true => tail,
        false => placed(tail, second),
    })
}

/// `T⊥ = 100; T = 696 N`: a number for what is made of the unknown says nothing before that is
/// known. Once the statements after it settle the unknown it is judged like any other; the
/// judgement where it does not hold.
fn refused_since(
    board: &Board<'_>,
    head: &Judgement,
    tail: &Judgement,
    (text, number): (&str, usize),
) -> Option<Judgement> {
    let tried = head.truth == Truth::Noted && head.remarks.contains(&Remark::LeaveLetter);
    let unknown = board.unknown()?;
    if !tried || !tail.truth.holds() {
        return None;
    }
    let mut standing = board.standing.clone();
    standing.extend(tail.values.iter().cloned());
    if !standing.contains_key(&unknown) {
        let sum = board.key.sum_of(unknown)?;
        let function = board.right(unknown)?;
        let by_right_balance = || Own::right(function, number);
        tail.establishes.contains(&sum).then_some(())?;
        // A balance of her own gives her the unknown.
        let own = standing.get(&sum).filter(|own| !own.right).cloned();
        standing.insert(unknown, own.unwrap_or_else(by_right_balance));
    }
    let with = Board {
        standing: &standing,
        memo: Memo::default(),
        ..*board
    };
    let again = judge_line(&with, unknown, text, number);
    let passes = again.truth.holds() || again.truth == Truth::TooFewFigures;
    (!passes).then_some(again)
}

/// How both statements were read, taken from them.
fn layouts(head: &mut Judgement, tail: &mut Judgement) -> String {
    let both = [head.layout.take(), tail.layout.take()];
    both.into_iter().flatten().collect::<Vec<_>>().join("; ")
}

/// Two statements as one: what both establish, if both hold.
fn joined(mut head: Judgement, mut tail: Judgement) -> Judgement {
    let layout = layouts(&mut head, &mut tail);
    // Something known told after it takes nothing away.
    let beside = tail.truth == Truth::Noted && tail.remarks.is_empty()
        || tail.evidence.aside == Some(Aside::True);
    if head.truth.holds() && beside {
        head.layout = Some(layout);
        return head;
    }
    tail.layout = Some(layout);
    if !tail.truth.holds() {
        tail.evidence.after_right = head.truth.holds();
        return tail;
    }
    tail.proved &= head.proved;
    tail.value = None;
    tail.truth = match (head.truth, tail.truth) {
        (Truth::Follows(mut lines), Truth::Follows(more)) => {
            lines.extend(more);
            lines.sort_unstable();
            lines.dedup();
            Truth::Follows(lines)
        }
        (Truth::Holds | Truth::Noted, truth) | (truth, Truth::Holds) => truth,
        (_, truth) => truth,
    };
    let mut values = head.values;
    values.append(&mut tail.values);
    tail.values = values;
    for step in head.establishes {
        if !tail.establishes.contains(&step) {
            tail.establishes.push(step);
        }
    }
    tail
}

/// A judgement of a part, its places counted in the whole line.
fn placed(mut judgement: Judgement, part: Span) -> Judgement {
    let caret = judgement.caret.map_or(part, |caret| {
        Span::new(caret.start + part.start, caret.end + part.start)
    });
    judgement.caret = Some(caret);
    judgement
}

/// The first statement and what comes after it.
fn parts(line: &str) -> Option<(Span, Span)> {
    let mut depth = 0_i32;
    for (at, sign) in line.char_indices() {
        match sign {
            '(' | '[' | '{' => depth += 1,
            ')' | ']' | '}' => depth -= 1,
            _ => {}
        }
        let rest = &line[at..];
        let mut signs = BETWEEN.iter();
        let sign = signs.find(|between| rest.starts_with(**between));
        let mut words = between_words().iter();
        let between = sign
            .map(|sign| (*sign, FOLLOWS.contains(sign)))
            .or_else(|| {
                let found = words.find(|(word, _)| rest.starts_with(word.as_str()));
                found.map(|(word, follows)| (word.as_str(), *follows))
            });
        let Some((between, follows)) = between.filter(|_| depth == 0) else {
            continue;
        };
        let (before, after) = (&line[..at], &line[at + between.len()..]);
        let concluded = follows && !after.trim().is_empty();
        if has_equals(before) && (has_equals(after) || concluded) {
            return Some((Span::new(0, at), Span::new(at + between.len(), line.len())));
        }
    }
    None
}

/// `sin γ = 0.906 ⇒ 65.0°` as `sin γ = 0.906 ⇒ γ = 65.0°`: what follows is the angle.
fn with_angle_named(head: &str, sign: &str, tail: &str) -> Option<String> {
    let (ratio, _) = head.split_once('=')?;
    let ratio = ratio.trim();
    let name = ["sin", "cos", "tan"]
        .iter()
        .find_map(|ratios| ratio.strip_prefix(ratios))?;
    let name = name
        .trim()
        .trim_start_matches('(')
        .trim_end_matches(')')
        .trim();
    let plain = !name.is_empty() && name.chars().all(char::is_alphabetic);
    let value = tail.trim_start().starts_with(|c: char| c.is_ascii_digit());
    let angle = value && tail.contains('°') && !has_equals(tail);
    (plain && angle).then(|| format!("{head}{sign} {name} = {}", tail.trim_start()))
}

/// `ΣFx = 0`: which sum is meant, and nothing in it.
fn is_only_sum(text: &str) -> bool {
    let Some((name, zero)) = text.split_once('=') else {
        return false;
    };
    let name = name.trim();
    let sum = name.starts_with(['Σ', '∑']) || name.to_lowercase().starts_with("sum");
    sum && zero.trim() == "0" && !name.contains(['+', '*', '·', '('])
}

/// True if an equals sign stands in a text that is no arrow's.
fn has_equals(text: &str) -> bool {
    let mut signs = text
        .char_indices()
        .filter(|(_, sign)| matches!(sign, '=' | '≈'));
    signs.any(|(at, _)| !text[at..].starts_with("=>"))
}
