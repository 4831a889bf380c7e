//! Problems that were worked at before, to be looked at again: their lines are entered into a
//! session of their own, and nothing is written.

use super::JournalDesk;
use super::class;
use super::past::{kept, resumable};
use crate::lesson::parse_problem_file;
use crate::practice::{Again, Earlier};
use crate::record::{Resume, confirmed_from};
use crate::session::{Course, Session};
use crate::text::{Prose, Words};

impl JournalDesk {
    /// Every problem at which a line was entered, the latest first; of what cannot be read or
    /// worked any more nothing is told.
    pub(super) fn list_earlier(&mut self) -> Vec<Earlier> {
        let Some((store, learner)) = &self.store else {
            return Vec::new();
        };
        let worked = store.worked(learner).unwrap_or_default();
        let (mut listed, mut kept) = (Vec::new(), Vec::new());
        for (resume, finished) in worked {
            let Some(told) = resumable(&resume).filter(|told| told.lines > 0) else {
                continue;
            };
            listed.push(Earlier {
                title: told.title,
                day: day(&resume),
                lines: told.lines,
                finished,
            });
            kept.push(resume);
        }
        self.earlier = kept;
        listed
    }

    /// One of these, with what was shown after each of its lines.
    pub(super) fn looked_at(&mut self, place: usize) -> Result<Again, Prose> {
        let nothing = || self.words.say("again.none", &[]);
        let resume = self.earlier.get(place).ok_or_else(nothing)?;
        let problem = parse_problem_file(&resume.problem_json).map_err(|_| nothing())?;
        let language = class::language_then(&resume.options);
        let sister = self.sister_then(resume.origin.as_ref(), &problem, language);
        let mut session = self.started(problem, sister, Words::of(language))?;
        // As it was when the problem was opened first, so that every line is answered as it was.
        session.lean(&confirmed_from(&resume.options));
        session.ask_of_answers(class::asked_then(&resume.options));
        let mut views = vec![session.view()];
        let lost = replay(&mut session, resume, &mut views);
        Ok(Again {
            session: Box::new(session),
            views,
            notes: self.told_of_gaps(&lost, resume.missing),
        })
    }
}

/// Enters the lines again. Gives the numbers of those that could not be read.
fn replay(
    session: &mut Session,
    resume: &Resume,
    views: &mut Vec<crate::session::View>,
) -> Vec<usize> {
    let gaps = resume.missing > 0 || resume.lines.iter().any(|line| line.lost);
    let mut lost = Vec::new();
    for past in &resume.lines {
        let verdict = past.verdict.as_ref();
        if let Some(verdict) = verdict {
            session.pass_estimates(&verdict.truth);
        }
        match verdict.filter(|_| gaps) {
            Some(verdict) => {
                let text = (!past.lost).then_some(past.text.as_str());
                let number = session.restore(text, &kept(verdict));
                lost.extend(number.filter(|_| past.lost));
            }
            None => {
                session.submit(&past.text);
            }
        }
        // That one left is no line to look at.
        let left = session.course() == Course::Quit;
        session.stay();
        if !left {
            views.push(session.view());
        }
    }
    lost
}

/// The day of the last line: what stands before the time, in UTC as the journals have it.
fn day(resume: &Resume) -> String {
    let last = resume.lines.last().map_or(&resume.at, |line| &line.at);
    last.split('T').next().unwrap_or_default().to_owned()
}
