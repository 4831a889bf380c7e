//! Lines of a damaged journal: where the text of one is lost, its kept answer stands for it.

use super::turn::{Kept, LineView, Turn, verdict_of};
use super::{Session, shortened};
use crate::key::StepId;
use crate::text::{Prose, Slot, printable, visible};

/// Orders that are known by their kept truth, and the words that give them.
const ORDERS: &[(&str, &str)] = &[
    ("hint", "command.hint"),
    ("shown", "command.show"),
    ("skipped", "command.skip"),
    ("withdrawn", "command.back"),
    ("carried", "command.go-on"),
    ("disputed", "command.dispute"),
];

/// Kept truths of orders that leave the step that is asked.
const LEAVING: &[&str] = &["skipped", "shown", "carried", "disputed"];

impl Session {
    /// Enters a line of a journal with gaps again. It keeps the verdict that it had: where it
    /// would be judged another way now, what it settled counts as passed over. A line whose text
    /// is lost (`None`) is stood for by what was kept of its answer.
    ///
    /// Gives the number of a lost line in the working, if it has one.
    pub fn restore(&mut self, text: Option<&str>, kept: &Kept) -> Option<usize> {
        let order = ORDERS.iter().find(|(truth, _)| *truth == kept.truth);
        let order = order.map(|(_, key)| first_word(&self.words.word(key)));
        let entered = text.map(ToOwned::to_owned).or(order);
        if let Some(entered) = entered {
            if self.entered_alike(&entered, kept) {
                return None;
            }
            let before = self.state.clone();
            self.go_to(kept);
            if self.entered_alike(&entered, kept) {
                return None;
            }
            self.state = before;
        }
        self.stand_for(text, kept)
    }

    /// Enters a line, and takes it back unless it is judged as it was.
    fn entered_alike(&mut self, line: &str, kept: &Kept) -> bool {
        let before = self.state.clone();
        let Turn { kept: now, .. } = self.submit(line);
        let alike = now.truth == kept.truth && now.progress == kept.progress;
        if !alike {
            self.state = before;
        }
        alike
    }

    /// The steps that an answer settled.
    fn settled_by(&self, kept: &Kept) -> Vec<StepId> {
        let steps = self.key.asked().map(|step| step.id);
        steps
            .filter(|step| kept.progress.contains(&self.step_name(*step)))
            .collect()
    }

    /// Passes over what was asked before the step that an answer settled.
    fn go_to(&mut self, kept: &Kept) {
        let Some(target) = self.settled_by(kept).first().copied() else {
            return;
        };
        while let Some(asked) = self.asked().filter(|asked| self.leads_to(*asked, target)) {
            self.pass(asked);
        }
        self.turn_to_asked();
    }

    fn stand_for(&mut self, text: Option<&str>, kept: &Kept) -> Option<usize> {
        let mut steps = self.settled_by(kept);
        if LEAVING.contains(&kept.truth.as_str()) && steps.is_empty() {
            steps.extend(self.asked());
        }
        let is_working = Kept::is_working(&kept.truth);
        if text.is_none() && !is_working && steps.is_empty() {
            return None;
        }
        let about = steps.first().copied().or(self.asked());
        let about = about.map_or_else(String::new, |step| self.title(step));
        for step in steps {
            if !self.state.reached.contains_key(&step) {
                self.pass(step);
                self.state.open = None;
                self.state.hint_stage = 0;
            }
        }
        let number = is_working.then(|| {
            let number = self.state.next_number;
            self.state.next_number += 1;
            number
        });
        let (sign, verdict) = verdict_of(&kept.truth);
        let message = match text {
            Some(_) => Prose::plain(kept.message.clone()),
            None => self
                .words
                .say("talk.lost", &[("step", Slot::Word(about.clone()))]),
        };
        let text = match text {
            Some(text) => printable(&shortened(&visible(text))),
            None => self.words.word("talk.lost-text"),
        };
        self.keep(
            LineView {
                number,
                text,
                about,
                sign,
                verdict: self.words.word(verdict),
                message,
                reading: None,
                caret: None,
                hints: Vec::new(),
                standing: true,
            },
            false,
        );
        self.turn_to_asked();
        self.finish_if_worked();
        number
    }
}

fn first_word(list: &str) -> String {
    list.split(',').next().unwrap_or_default().trim().to_owned()
}
