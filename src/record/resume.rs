//! What a learner left open, as far as it is needed to put it before them again.

use super::{Damage, DamagedLine, Ending, Entry, Journal, Opened, Origin, RecordId, Verdict};
use std::collections::{BTreeMap, BTreeSet};

/// A problem that was opened and not closed, with everything entered for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Resume {
    /// The record that opened it last. A sitting that takes it up names it in
    /// [`Opened::continues`]; one that gives it up names it in [`super::Closed::problem`].
    pub opened: RecordId,
    /// When it was opened last.
    pub at: String,
    /// The problem as JSON text.
    pub problem_json: String,
    /// Where it was drawn from; none for a problem of the user's own.
    pub origin: Option<Origin>,
    /// The options that the session ran under.
    pub options: BTreeMap<String, String>,
    /// Everything entered for it, in order, over all sittings that worked at it.
    pub lines: Vec<PastLine>,
    /// How many records of it could not be read and left no trace in others.
    pub missing: usize,
}

/// A line of a problem that was left open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PastLine {
    /// Its record.
    pub id: RecordId,
    /// When it was entered.
    pub at: String,
    /// Its text, exactly as entered; empty if it was lost.
    pub text: String,
    /// True if the line could not be read and only its answer tells of it.
    pub lost: bool,
    /// What the tutor answered; none if the program was stopped before it could.
    pub verdict: Option<Verdict>,
}

impl Resume {
    /// The problem's code, if it came from a lesson.
    pub fn code(&self) -> Option<&str> {
        self.origin.as_ref().map(|origin| origin.code.as_str())
    }

    /// The lines without an answer. They are judged when the lines are entered again.
    pub fn orphans(&self) -> impl Iterator<Item = &PastLine> {
        self.lines.iter().filter(|line| line.verdict.is_none())
    }

    /// The last line that was answered.
    pub fn last_answered(&self) -> Option<&PastLine> {
        self.lines.iter().rev().find(|line| line.verdict.is_some())
    }
}

/// The last problem of a sitting that was opened and not closed.
pub fn unfinished(journal: &Journal) -> Option<Resume> {
    unfinished_over(std::slice::from_ref(journal))
}

/// The last problem over several sittings, given in order, that was opened and not closed. If it
/// took up a problem of an earlier sitting, the lines of that one come first.
pub fn unfinished_over(journals: &[Journal]) -> Option<Resume> {
    all_unfinished_over(journals).into_iter().next()
}

/// Every problem over several sittings, given in order, that was opened and not closed, the latest
/// first.
pub fn all_unfinished_over(journals: &[Journal]) -> Vec<Resume> {
    let shelf = Shelf::fill(journals);
    let openings = shelf.openings.iter().rev();
    let left =
        openings.filter(|(id, _, _)| !shelf.continued.contains(id) && !shelf.closed.contains(id));
    left.map(|opening| shelf.resume(*opening)).collect()
}

/// Every problem over several sittings, given in order, at which a line was entered, the latest
/// first; true beside one that was finished.
pub fn all_worked_over(journals: &[Journal]) -> Vec<(Resume, bool)> {
    let shelf = Shelf::fill(journals);
    let openings = shelf.openings.iter().rev();
    let last = openings.filter(|(id, _, _)| !shelf.continued.contains(id));
    let worked = last.map(|opening| {
        let mut chain = shelf.chain(opening.0).into_iter();
        let finished = chain.any(|id| shelf.finished.contains(id));
        (shelf.resume(*opening), finished)
    });
    worked
        .filter(|(resume, _)| !resume.lines.is_empty())
        .collect()
}

/// How many lines belong to problems whose opening none of the journals tells.
pub fn lines_without_problem(journals: &[Journal]) -> usize {
    let shelf = Shelf::fill(journals);
    let astray = shelf
        .lines
        .iter()
        .filter(|(id, _)| !shelf.by_id.contains_key(*id));
    astray.map(|(_, lines)| lines.len()).sum()
}

/// A line: its record, when it was entered, and its text; none where only the answer could be read.
type Entered<'a> = (&'a RecordId, &'a str, Option<&'a str>);

/// The records of several sittings, sorted for looking up.
#[derive(Default)]
struct Shelf<'a> {
    openings: Vec<(&'a RecordId, &'a str, &'a Opened)>,
    by_id: BTreeMap<&'a RecordId, &'a Opened>,
    continued: BTreeSet<&'a RecordId>,
    closed: BTreeSet<&'a RecordId>,
    /// Those that were closed at their end.
    finished: BTreeSet<&'a RecordId>,
    lines: BTreeMap<&'a RecordId, Vec<Entered<'a>>>,
    verdicts: BTreeMap<&'a RecordId, &'a Verdict>,
    /// Every line that could be read.
    readable: BTreeSet<&'a RecordId>,
    /// By the opening that they stand behind, how many records left no trace.
    missing: BTreeMap<&'a RecordId, usize>,
}

impl<'a> Shelf<'a> {
    fn fill(journals: &'a [Journal]) -> Shelf<'a> {
        let mut shelf = Shelf::default();
        for record in journals.iter().flat_map(|journal| &journal.records) {
            if let Entry::Line(_) = &record.entry {
                shelf.readable.insert(&record.id);
            }
        }
        for journal in journals {
            shelf.take(journal);
        }
        shelf
    }

    fn take(&mut self, journal: &'a Journal) {
        let mut current = None;
        let mut last = None;
        let mut gaps = 0;
        for record in &journal.records {
            let before = last.replace(record.sequence).unwrap_or(record.sequence);
            let gap = usize::try_from(record.sequence.saturating_sub(before + 1)).unwrap_or(0);
            gaps += gap;
            self.miss(current, gap);
            match &record.entry {
                Entry::Opened(opened) => {
                    self.openings.push((&record.id, &record.at, opened));
                    self.by_id.insert(&record.id, opened);
                    self.continued.extend(&opened.continues);
                    current = Some(&record.id);
                }
                Entry::Closed(closed) => {
                    self.closed.insert(&closed.problem);
                    if closed.ending == Ending::Finished {
                        self.finished.insert(&closed.problem);
                    }
                }
                Entry::Line(line) => {
                    if let Some(problem) = &line.problem {
                        let text = Some(line.text.as_str());
                        let lines = self.lines.entry(problem).or_default();
                        lines.push((&record.id, &record.at, text));
                        current = Some(problem);
                    }
                }
                Entry::Verdict(verdict) => {
                    self.answered(current, &record.at, verdict);
                }
                Entry::Sitting(_) | Entry::Other(_) => {}
            }
        }
        // What stands behind the last whole record leaves no gap.
        let whole = |line: &&DamagedLine| line.why != Damage::Torn;
        let damaged = journal.damaged.iter().filter(whole).count();
        self.miss(current, damaged.saturating_sub(gaps));
        self.forgive_answers(journal);
    }

    /// Takes an answer. One to a line that nobody can read tells that there was a line.
    fn answered(&mut self, current: Option<&'a RecordId>, at: &'a str, verdict: &'a Verdict) {
        let first = self.verdicts.insert(&verdict.line, verdict).is_none();
        if let Some(problem) = current
            && first
            && !self.readable.contains(&verdict.line)
        {
            let lines = self.lines.entry(problem).or_default();
            lines.push((&verdict.line, at, None));
            self.found(problem);
        }
    }

    /// A line without its answer is judged anew: an answer that is missing is no loss.
    fn forgive_answers(&mut self, journal: &'a Journal) {
        for record in &journal.records {
            if let Entry::Line(line) = &record.entry
                && let Some(problem) = &line.problem
                && !self.verdicts.contains_key(&record.id)
            {
                self.found(problem);
            }
        }
    }

    fn miss(&mut self, problem: Option<&'a RecordId>, records: usize) {
        if let Some(problem) = problem {
            *self.missing.entry(problem).or_default() += records;
        }
    }

    fn found(&mut self, problem: &'a RecordId) {
        if let Some(missing) = self.missing.get_mut(problem) {
            *missing = missing.saturating_sub(1);
        }
    }

    /// An opening and those that it continues, the latest first.
    fn chain(&self, id: &'a RecordId) -> Vec<&'a RecordId> {
        let mut chain = vec![id];
        let mut seen = BTreeSet::from([id]);
        let mut next = self
            .by_id
            .get(id)
            .and_then(|opened| opened.continues.as_ref());
        // A damaged journal could lead round in a circle.
        while let Some(id) = next.filter(|id| seen.insert(id)) {
            chain.push(id);
            next = self
                .by_id
                .get(id)
                .and_then(|opened| opened.continues.as_ref());
        }
        chain
    }

    /// What was entered for a problem, with the openings that it continues.
    fn resume(&self, (id, at, opened): (&'a RecordId, &'a str, &'a Opened)) -> Resume {
        let chain = self.chain(id);
        Resume {
            missing: chain.iter().filter_map(|id| self.missing.get(id)).sum(),
            opened: id.clone(),
            at: at.to_owned(),
            problem_json: opened.problem_json.clone(),
            origin: opened.origin.clone(),
            options: opened.options.clone(),
            lines: chain
                .into_iter()
                .rev()
                .flat_map(|id| self.lines_of(id))
                .collect(),
        }
    }

    fn lines_of(&self, opened: &RecordId) -> Vec<PastLine> {
        let lines = self.lines.get(opened).map_or(&[][..], Vec::as_slice);
        let line = |&(id, at, text): &Entered<'_>| PastLine {
            id: id.clone(),
            at: at.to_owned(),
            text: text.unwrap_or_default().to_owned(),
            lost: text.is_none(),
            verdict: self.verdicts.get(id).map(|&verdict| verdict.clone()),
        };
        lines.iter().map(line).collect()
    }
}
