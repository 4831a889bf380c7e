//! What a learner left open, as far as it is needed to put it before them again.

use super::{Entry, Journal, Opened, Origin, RecordId, Verdict};
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
}

/// A line of a problem that was left open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PastLine {
    /// Its record.
    pub id: RecordId,
    /// When it was entered.
    pub at: String,
    /// Its text, exactly as entered.
    pub text: String,
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
    left.map(|(id, at, opened)| Resume {
        opened: (*id).clone(),
        at: (*at).to_owned(),
        problem_json: opened.problem_json.clone(),
        origin: opened.origin.clone(),
        options: opened.options.clone(),
        lines: shelf
            .chain(id)
            .into_iter()
            .rev()
            .flat_map(|id| shelf.lines_of(id))
            .collect(),
    })
    .collect()
}

/// The records of several sittings, sorted for looking up.
#[derive(Default)]
struct Shelf<'a> {
    openings: Vec<(&'a RecordId, &'a str, &'a Opened)>,
    by_id: BTreeMap<&'a RecordId, &'a Opened>,
    continued: BTreeSet<&'a RecordId>,
    closed: BTreeSet<&'a RecordId>,
    lines: BTreeMap<&'a RecordId, Vec<(&'a RecordId, &'a str, &'a str)>>,
    verdicts: BTreeMap<&'a RecordId, &'a Verdict>,
}

impl<'a> Shelf<'a> {
    fn fill(journals: &'a [Journal]) -> Shelf<'a> {
        let mut shelf = Shelf::default();
        for record in journals.iter().flat_map(|journal| &journal.records) {
            match &record.entry {
                Entry::Opened(opened) => {
                    shelf.openings.push((&record.id, &record.at, opened));
                    shelf.by_id.insert(&record.id, opened);
                    shelf.continued.extend(&opened.continues);
                }
                Entry::Closed(closed) => {
                    shelf.closed.insert(&closed.problem);
                }
                Entry::Line(line) => {
                    if let Some(problem) = &line.problem {
                        let lines = shelf.lines.entry(problem).or_default();
                        lines.push((&record.id, &record.at, &line.text));
                    }
                }
                Entry::Verdict(verdict) => {
                    shelf.verdicts.insert(&verdict.line, verdict);
                }
                Entry::Sitting(_) | Entry::Other(_) => {}
            }
        }
        shelf
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

    fn lines_of(&self, opened: &RecordId) -> Vec<PastLine> {
        let lines = self.lines.get(opened).map_or(&[][..], Vec::as_slice);
        let line = |&(id, at, text): &(&RecordId, &str, &str)| PastLine {
            id: id.clone(),
            at: at.to_owned(),
            text: text.to_owned(),
            verdict: self.verdicts.get(id).map(|&verdict| verdict.clone()),
        };
        lines.iter().map(line).collect()
    }
}
