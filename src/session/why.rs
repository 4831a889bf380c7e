//! `why`: on what a verdict rests. It tells how the line was read, what was compared with what, and
//! how that came out, without a value that is still to be found.

use super::state::Open;
use super::turn::Sign;
use super::{Outcome, Session};
use crate::diagnosis::{Because, Diagnosis};
use crate::judge::{Aside, Judgement, Remark, Truth};
use crate::text::{Prose, Slot};

impl Session {
    /// The answer to `why` or `why 3`; `None` for any other line, and where no line was judged.
    pub(super) fn answer_why(&self, line: &str) -> Option<Outcome> {
        let asked = self.line_asked_about(line)?;
        let last = self.state.lines.iter().rev().find_map(|view| view.number);
        let at = asked.or(last)?;
        if let Some(basis) = self.state.bases.get(&at) {
            return Some(Outcome::talk(basis.clone()));
        }
        // Where a force or a point is asked, `why` is a question about that.
        if asked.is_none() && !self.is_free() {
            return None;
        }
        let mut lines = self.state.lines.iter();
        let line = lines.find(|view| view.number == Some(at));
        let key = match line.map(|view| view.sign) {
            None => "why.no-line",
            Some(Sign::Unclear) => "why.unread",
            Some(Sign::Noted) => "why.words",
            Some(_) => "why.said",
        };
        let slots = [("line", Slot::Word(at.to_string()))];
        Some(Outcome::talk(self.words.say(key, &slots)))
    }

    /// The line that `why` asks about: none for the last one.
    fn line_asked_about(&self, line: &str) -> Option<Option<usize>> {
        let plain = line.trim().trim_end_matches(['?', '.', ' ']).to_lowercase();
        let words = self.words.word("command.why");
        let known = |text: &str| words.split(',').any(|word| word.trim() == text.trim());
        if known(&plain) {
            return Some(None);
        }
        let rest = plain.trim_end_matches(|c: char| c.is_ascii_digit());
        let number = plain[rest.len()..].parse().ok()?;
        let lines = self.words.word("why.line");
        let mut lines = lines.split(',').map(str::trim);
        let whole = rest.trim_end();
        let before = lines.find_map(|line| whole.strip_suffix(line));
        known(before.unwrap_or(whole)).then_some(Some(number))
    }

    /// On what the verdict on a line rests, kept until it is asked for.
    pub(super) fn keep_basis(
        &mut self,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
        outcome: &Outcome,
    ) {
        let number = self.state.next_number;
        self.state.judged.remove(&number);
        if matches!(outcome.sign, Sign::Wrong | Sign::Incomplete) {
            let (judgement, diagnosis) = (judgement.clone(), diagnosis.clone());
            let found = Open {
                judgement,
                diagnosis,
                number,
            };
            self.state.judged.insert(number, found);
        }
        let read = judgement.layout.clone();
        let read = read.filter(|_| !matches!(judgement.truth, Truth::NotUnderstood(_)));
        let Some(reading) = read else {
            self.state.bases.remove(&number);
            return;
        };
        let slots = [
            ("line", Slot::Word(number.to_string())),
            ("reading", Slot::Name(reading)),
        ];
        let read = match judgement.remarks.contains(&Remark::OtherReading) {
            true => "why.read-other",
            false => "why.read",
        };
        let step = [("step", Slot::Word(self.title(judgement.target)))];
        let came_out = match &judgement.truth {
            Truth::Follows(lines) if outcome.sign != Sign::Wrong => self.agrees_with_own(lines),
            _ => self.words.say(came_out(judgement, outcome), &[]),
        };
        let mut basis = self.words.say(read, &slots);
        basis = basis.then(self.words.say(compared(judgement), &step));
        basis = basis.then(came_out);
        if let Some(named) = diagnosis.spoken().filter(|_| !outcome.mistakes.is_empty()) {
            let key = match named.because {
                Because::Form => "why.mistake-form",
                _ => "why.mistake-value",
            };
            basis = basis.then(self.words.say(key, &[]));
        }
        self.state.bases.insert(number, basis);
    }

    fn agrees_with_own(&self, lines: &[usize]) -> Prose {
        let lines: Vec<String> = lines.iter().map(usize::to_string).collect();
        if lines.is_empty() {
            return self.words.say("why.agrees-relation", &[]);
        }
        let slots = [("lines", Slot::Word(lines.join(", ")))];
        self.words.say("why.agrees-own", &slots)
    }
}

/// What was compared with what.
fn compared(judgement: &Judgement) -> &'static str {
    let evidence = &judgement.evidence;
    let equation = evidence.equation || judgement.target.is_balance();
    match &judgement.truth {
        Truth::Mismatched(_) => "why.kinds",
        Truth::Circular => "why.itself",
        Truth::Noted if judgement.names.is_some() => "why.own-name",
        _ if evidence.broken_link => "why.chain",
        _ if evidence.alone => "why.value",
        _ if equation && judgement.truth != Truth::Noted => "why.equation",
        _ if evidence.names_only => "why.names",
        Truth::Noted | Truth::OtherAngle => "why.relation",
        _ => "why.form",
    }
}

/// How that came out.
fn came_out(judgement: &Judgement, outcome: &Outcome) -> &'static str {
    let remark = |wanted: Remark| judgement.remarks.contains(&wanted);
    let sense = outcome.sign == Sign::Wrong && judgement.truth.holds();
    match &judgement.truth {
        _ if judgement.evidence.says_again.is_some() => "why.said-again",
        Truth::Mismatched(_) => "why.kinds-differ",
        Truth::Circular => "why.says-nothing",
        _ if judgement.names.is_some() && judgement.truth == Truth::Noted => "why.used-later",
        _ if sense => "why.sense",
        Truth::Holds => "why.agrees",
        Truth::HoldsRounded => "why.agrees-rounded",
        Truth::TooFewFigures => "why.figures",
        Truth::WrongUnit { .. } => "why.unit",
        Truth::Noted | Truth::OtherAngle => match () {
            _ if remark(Remark::SaysNothing) || remark(Remark::OfNumbers) => "why.says-nothing",
            _ if remark(Remark::NotSeen) || remark(Remark::HoldsHere) => "why.not-seen",
            _ if remark(Remark::ByChance) => "why.near",
            _ if judgement.proved || judgement.evidence.aside == Some(Aside::True) => "why.agrees",
            _ => "why.open",
        },
        // What was asked about, or found true of what is known, was refused by nobody.
        _ => match outcome.sign {
            Sign::Noted => "why.open",
            Sign::Right => "why.agrees",
            _ => "why.differs",
        },
    }
}
