//! A problem that was left, and how it is taken up: its lines are entered again.

use super::JournalDesk;
use super::class;
use crate::lesson::{ProblemFile, parse_problem_file};
use crate::practice::{Opening, Resumable};
use crate::problem::Problem;
use crate::record::{Origin, PastLine, Resume, Verdict, confirmed_from, confirmed_told};
use crate::session::{Course, Kept, Session};
use crate::text::{Language, Prose, Slot, Words};

impl JournalDesk {
    /// Enters the lines of a problem again. What the program was stopped from writing down, the
    /// last verdict or the end, is written now. Gives notes where that failed.
    fn replay(&mut self, session: &mut Session, resume: Past) -> Vec<Prose> {
        let mut notes = Vec::new();
        let mut lost = Vec::new();
        let gaps = !resume.is_whole();
        for past in resume.lines {
            if let Some(verdict) = &past.verdict {
                session.pass_estimates(&verdict.truth);
            }
            if let Some(verdict) = past.verdict.as_ref().filter(|_| gaps) {
                let text = (!past.lost).then_some(past.text.as_str());
                let number = session.restore(text, &kept(verdict));
                lost.extend(number.filter(|_| past.lost));
                session.stay();
                continue;
            }
            let turn = session.submit(&past.text);
            // Leaving is not done again.
            session.stay();
            if past.verdict.is_none() {
                notes.extend(self.write_opened());
                notes.extend(self.append(Self::verdict(past.id, &turn)).1);
            }
        }
        notes.extend(self.told_of_gaps(&lost, resume.missing));
        if session.course() == Course::Finished {
            let earlier = || self.current.as_ref()?.continues.clone();
            if let Some(problem) = self.opened_id().or_else(earlier) {
                notes.extend(self.append(Self::finished(problem)).1);
            }
        }
        notes
    }

    /// What could not be read of the lines that were entered again.
    pub(super) fn told_of_gaps(&self, lost: &[usize], missing: usize) -> Vec<Prose> {
        let numbers: Vec<String> = lost.iter().map(ToString::to_string).collect();
        let slots = [("lines", Slot::Word(numbers.join(", ")))];
        let told = match lost.len() {
            0 => None,
            1 => Some("cli.lost-lines.one"),
            _ => Some("cli.lost-lines.many"),
        };
        let untold = (missing > 0).then_some("cli.lost-lines.unknown");
        let keys = told.into_iter().chain(untold);
        keys.map(|key| self.words.say(key, &slots)).collect()
    }

    /// The sister that a problem had when it was begun.
    pub(super) fn sister_then(
        &self,
        origin: Option<&Origin>,
        problem: &ProblemFile,
        language: Language,
    ) -> Option<Problem> {
        match problem {
            ProblemFile::Guided(problem) => self.library.sister(origin?, problem, language),
            ProblemFile::General(_) => None,
        }
    }

    /// Opens a problem that was left, with its lines entered again.
    pub(super) fn take_up(&mut self, resume: Resume) -> Result<Opening, Prose> {
        self.last = Some(resume.problem_json.clone());
        let problem = parse_problem_file(&resume.problem_json)
            .map_err(|_| self.words.say("cli.nothing-left", &[]))?;
        let language = class::language_then(&resume.options);
        let sister = self.sister_then(resume.origin.as_ref(), &problem, language);
        let mut session = self.started(problem, sister, Words::of(language))?;
        // As it was when the problem was opened first, so that every line is answered as it was.
        let confirmed = confirmed_from(&resume.options);
        let mut asked = resume.options.clone();
        confirmed_told(&confirmed)
            .keys()
            .for_each(|key| drop(asked.remove(key)));
        session.lean(&confirmed);
        session.ask_of_answers(class::asked_then(&resume.options));
        let origin = (resume.origin, Some(resume.opened));
        self.current = Some(super::Current::new(
            resume.problem_json,
            origin,
            (confirmed, asked),
        ));
        let past = Past {
            lines: resume.lines,
            missing: resume.missing,
        };
        let whole = past.is_whole();
        let troubles = self.replay(&mut session, past);
        let mut notes = self.take_notes();
        notes.extend(troubles);
        Ok(Opening {
            session: Box::new(session),
            resumed: true,
            whole,
            first: None,
            notes,
        })
    }
}

/// What was entered for a problem that was left.
struct Past {
    lines: Vec<PastLine>,
    missing: usize,
}

impl Past {
    /// True if every line could be read.
    fn is_whole(&self) -> bool {
        self.missing == 0 && !self.lines.iter().any(|line| line.lost)
    }
}

/// What a journal kept of an answer.
pub(super) fn kept(verdict: &Verdict) -> Kept {
    Kept {
        truth: verdict.truth.clone(),
        progress: verdict.progress.clone(),
        mistakes: verdict.mistakes.clone(),
        confirmed: verdict.confirmed.clone(),
        hint: verdict.hint,
        message: verdict.message.clone(),
    }
}

fn is_working(line: &PastLine) -> bool {
    let verdict = line.verdict.as_ref();
    verdict.is_none_or(|verdict| Kept::is_working(&verdict.truth))
}

/// A problem that was left, as the list tells it.
pub(super) fn resumable(left: &Resume) -> Option<Resumable> {
    let title = match parse_problem_file(&left.problem_json).ok()? {
        ProblemFile::Guided(problem) => problem.title().to_owned(),
        ProblemFile::General(system) => system.parts().title.clone(),
    };
    Some(Resumable {
        title,
        // Orders, such as to leave, are no lines of the working.
        lines: left.lines.iter().filter(|line| is_working(line)).count(),
    })
}
