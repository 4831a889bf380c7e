//! Looking again, in the line dialogue: the problems that were worked at, by date, and one of them
//! line by line.

use super::{Dialogue, is_one_of};
use crate::practice::{Again, Earlier};
use crate::session::View;
use crate::text::Slot;
use std::io;

impl Dialogue<'_> {
    /// Lists them and looks at those that are chosen, until one goes back. False at the end of the
    /// input.
    pub(super) fn look_again(&mut self) -> io::Result<bool> {
        loop {
            let list = self.desk.earlier();
            if list.is_empty() {
                self.say(&self.words.say("again.nothing", &[]))?;
                return Ok(true);
            }
            self.say(&self.words.say("plain.again.choose", &[]))?;
            for (place, earlier) in list.iter().enumerate() {
                self.listed(place + 1, earlier)?;
            }
            let Some(line) = self.ask()? else {
                return Ok(false);
            };
            let typed = line.trim().to_lowercase();
            let number = typed.parse::<usize>().ok();
            match number.filter(|number| (1..=list.len()).contains(number)) {
                Some(number) => match self.desk.look_again(number - 1) {
                    Ok(again) => {
                        if !self.replay(again)? {
                            return Ok(false);
                        }
                    }
                    Err(prose) => self.say(&prose)?,
                },
                None if self.goes_back(&typed) => return Ok(true),
                None => self.say(&self.words.say("plain.choice-unclear", &[]))?,
            }
        }
    }

    /// An empty line and the words for leaving and for ending.
    fn goes_back(&self, typed: &str) -> bool {
        let words = ["command.quit", "command.done", "command.back"];
        typed.is_empty() || words.iter().any(|key| is_one_of(&self.words, key, typed))
    }

    fn listed(&mut self, number: usize, earlier: &Earlier) -> io::Result<()> {
        let key = match (earlier.finished, earlier.lines) {
            (true, 1) => "again.finished.one",
            (true, _) => "again.finished.many",
            (false, 1) => "again.unfinished.one",
            (false, _) => "again.unfinished.many",
        };
        let count = [("count", Slot::Value(earlier.lines.to_string()))];
        let slots = [
            ("number", Slot::Word(number.to_string())),
            ("day", Slot::Word(earlier.day.clone())),
            ("title", Slot::Word(earlier.title.clone())),
            ("far", Slot::Prose(self.words.say(key, &count))),
        ];
        self.say(&self.words.say("plain.again.row", &slots))
    }

    /// Line by line: Enter goes on, `back` a line back. False at the end of the input.
    fn replay(&mut self, again: Again) -> io::Result<bool> {
        let Again {
            session,
            views,
            notes,
        } = again;
        let Some(first) = views.first() else {
            return Ok(true);
        };
        self.blank()?;
        self.line(&self.manner.text(&first.title))?;
        self.paragraph(&self.manner.text(&first.statement))?;
        for note in notes {
            self.say(&note)?;
        }
        self.diagram(session.as_ref(), first, None)?;
        self.say(&self.words.say("plain.again.keys", &[]))?;
        let last = views.len() - 1;
        let mut at = 0;
        loop {
            let Some(line) = self.ask()? else {
                return Ok(false);
            };
            let typed = line.trim().to_lowercase();
            let before = at;
            match typed.as_str() {
                "" if at == last => return Ok(true),
                "" => at += 1,
                typed if is_one_of(&self.words, "command.back", typed) => {
                    at = at.saturating_sub(1);
                }
                typed => match typed.parse::<usize>() {
                    Ok(number) if number <= last => at = number,
                    _ if self.goes_back(typed) => return Ok(true),
                    _ => {
                        self.say(&self.words.say("plain.again.keys", &[]))?;
                        continue;
                    }
                },
            }
            self.line_again(&views[at], (at, last))?;
            let known = (at > before).then_some(&views[before].marks);
            if views[at].marks != views[before].marks {
                self.diagram(session.as_ref(), &views[at], known)?;
            }
            if at == last {
                self.at_its_end(&views[at])?;
            }
        }
    }

    /// A line as it was answered.
    fn line_again(&mut self, view: &View, (at, last): (usize, usize)) -> io::Result<()> {
        let slots = [
            ("number", Slot::Value(at.to_string())),
            ("count", Slot::Value(last.to_string())),
        ];
        let Some(line) = view.lines.last().filter(|_| at > 0) else {
            return self.say(&self.words.say("again.start", &slots));
        };
        self.say(&self.words.say("again.place", &slots))?;
        self.line(&format!("> {}", line.text))?;
        self.answer_line(line)
    }

    fn at_its_end(&mut self, view: &View) -> io::Result<()> {
        for prose in &view.summary {
            self.say(prose)?;
        }
        self.say(&self.words.say("plain.again.end", &[]))
    }
}
