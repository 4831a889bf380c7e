//! How a learner stands with each lesson: a simple rule over the journals, until a model of the
//! learner takes its place.
//!
//! A problem is finished *alone* if it was closed as finished, nothing of it was shown, passed over
//! or told by the last hint, and of its judged lines at most one in four did not hold. A lesson is
//! mastered while its last two finished problems were finished alone. It is due again 7 days after
//! the last of them, and after each further one in a row the wait doubles, up to 56 days.

use super::{Ending, Entry, Journal, Opened, RecordId, Verdict};
use std::collections::BTreeMap;

/// The hint that tells the line itself.
const LAST_HINT: u8 = 4;
/// How many problems in a row, finished alone, make a lesson mastered.
const ENOUGH: u32 = 2;
/// After how many days a lesson that has just become mastered is due.
const FIRST_WAIT: i64 = 7;
/// How often the wait doubles at most.
const MOST_DOUBLINGS: u32 = 3;

/// How a learner stands with a lesson.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// No line was entered at it.
    #[default]
    New,
    /// Worked at, and not mastered.
    Begun,
    /// Mastered.
    Mastered,
    /// Mastered some time ago: it is time to see whether it is still so.
    Due,
}

/// What the journals tell of the work at one lesson.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LessonWork {
    /// How many problems at the end were finished alone, without another between them.
    alone: u32,
    /// The day of the last of these.
    day: Option<i64>,
}

impl LessonWork {
    /// How the learner stands at a time, RFC 3339 in UTC. What is mastered never becomes due where
    /// one of the times cannot be read.
    pub fn standing(&self, now: &str) -> Standing {
        if self.alone < ENOUGH {
            return Standing::Begun;
        }
        let wait = FIRST_WAIT << (self.alone - ENOUGH).min(MOST_DOUBLINGS);
        match (self.day, day(now)) {
            (Some(last), Some(today)) if today - last >= wait => Standing::Due,
            _ => Standing::Mastered,
        }
    }
}

/// The work at every lesson at which a line was entered, over several sittings.
pub fn work_over(journals: &[Journal]) -> BTreeMap<String, LessonWork> {
    let mut tally = Tally::default();
    for record in journals.iter().flat_map(|journal| &journal.records) {
        match &record.entry {
            Entry::Opened(opened) => tally.open(&record.id, opened),
            Entry::Line(line) => {
                if let Some(problem) = &line.problem {
                    tally.line(&record.id, problem);
                }
            }
            Entry::Verdict(verdict) => tally.judge(verdict),
            Entry::Closed(closed) if closed.ending == Ending::Finished => {
                tally.finish(&closed.problem, &record.at);
            }
            Entry::Sitting(_) | Entry::Closed(_) | Entry::Other(_) => {}
        }
    }
    tally.work()
}

/// The work at one problem, over all sittings at it.
#[derive(Default)]
struct Attempt {
    lesson: String,
    lines: usize,
    held: usize,
    failed: usize,
    helped: bool,
}

impl Attempt {
    fn is_alone(&self) -> bool {
        !self.helped && self.lines > 0 && self.failed * 4 <= self.held + self.failed
    }
}

#[derive(Default)]
struct Tally<'a> {
    attempts: Vec<Attempt>,
    /// The attempt that each opening belongs to.
    of_opening: BTreeMap<&'a RecordId, usize>,
    /// The attempt that each line belongs to.
    of_line: BTreeMap<&'a RecordId, usize>,
    /// When which attempt was finished, each once.
    ends: BTreeMap<usize, &'a str>,
}

impl<'a> Tally<'a> {
    fn open(&mut self, id: &'a RecordId, opened: &'a Opened) {
        let Some(origin) = &opened.origin else {
            return;
        };
        let earlier = opened.continues.as_ref();
        let known = earlier.and_then(|id| self.of_opening.get(id)).copied();
        let attempt = known.unwrap_or_else(|| {
            self.attempts.push(Attempt {
                lesson: origin.lesson.clone(),
                ..Attempt::default()
            });
            self.attempts.len() - 1
        });
        self.of_opening.insert(id, attempt);
    }

    fn line(&mut self, id: &'a RecordId, problem: &'a RecordId) {
        if let Some(attempt) = self.of_opening.get(problem) {
            self.attempts[*attempt].lines += 1;
            self.of_line.insert(id, *attempt);
        }
    }

    fn judge(&mut self, verdict: &'a Verdict) {
        // A line is taken out with its first answer, so that none is counted twice.
        let Some(attempt) = self.of_line.remove(&verdict.line) else {
            return;
        };
        let attempt = &mut self.attempts[attempt];
        match verdict.truth.as_str() {
            "holds" | "rounded" | "follows" => attempt.held += 1,
            "wrong" | "mismatched" => attempt.failed += 1,
            "shown" | "skipped" => attempt.helped = true,
            _ => {}
        }
        attempt.helped |= verdict.hint.is_some_and(|stage| stage >= LAST_HINT);
    }

    fn finish(&mut self, problem: &'a RecordId, at: &'a str) {
        if let Some(attempt) = self.of_opening.get(problem) {
            self.ends.entry(*attempt).or_insert(at);
        }
    }

    fn work(self) -> BTreeMap<String, LessonWork> {
        let mut work: BTreeMap<String, LessonWork> = BTreeMap::new();
        for attempt in self.attempts.iter().filter(|attempt| attempt.lines > 0) {
            work.entry(attempt.lesson.clone()).or_default();
        }
        // Sittings of two programs may overlap: ends count in the order of their times.
        let mut ends: Vec<(&str, usize)> = self.ends.iter().map(|(id, at)| (*at, *id)).collect();
        ends.sort_unstable();
        for (at, attempt) in ends {
            let attempt = &self.attempts[attempt];
            let lesson = work.entry(attempt.lesson.clone()).or_default();
            *lesson = if attempt.is_alone() {
                LessonWork {
                    alone: lesson.alone + 1,
                    day: day(at),
                }
            } else {
                LessonWork::default()
            };
        }
        work
    }
}

/// The number of a time's day, counted from some day long ago.
fn day(time: &str) -> Option<i64> {
    let date = time.get(..10)?;
    let mut parts = date.split('-').map(|part| part.parse::<i64>().ok());
    let (year, month, day) = (parts.next()??, parts.next()??, parts.next()??);
    if parts.next().is_some() || !(1..=12).contains(&month) || !(1..=31).contains(&day) {
        return None;
    }
    // Years from March on, so that a leap day ends one; months then have 153 days in five.
    let (year, month) = match month {
        1 | 2 => (year - 1, month + 9),
        _ => (year, month - 3),
    };
    let leap_days = year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400);
    Some(365 * year + leap_days + (153 * month + 2) / 5 + day)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn verif_days_are_counted_over_the_ends_of_months_and_leap_years() {
        let between = |from: &str, to: &str| day(to).unwrap() - day(from).unwrap();
        for (from, to, days) in [
            ("2026-11-28T23:59:59Z", "2026-11-29T00:00:00Z", 1),
            ("2027-02-28", "2027-03-01", 1),
            ("2028-02-28", "2028-03-01", 2),
            ("2100-02-28", "2100-03-01", 1),
            ("2000-02-28", "2000-03-01", 2),
            ("2026-12-31", "2027-01-01", 1),
            ("2026-01-01", "2027-01-01", 365),
            ("2028-01-01", "2029-01-01", 366),
        ] {
            assert_eq!(between(from, to), days, "{from} {to}");
        }
        for odd in ["", "2026-11", "2026-13-01", "2026-00-01", "yesterday!"] {
            assert_eq!(day(odd), None, "{odd}");
        }
    }
}
