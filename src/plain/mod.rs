//! The line dialogue: the same tutor for screen readers, pipes and tests. No alternate screen, no
//! cursor movement, no decoration; each change is said once; choices are numbered.

use crate::builder::Builder;
use crate::practice::{
    Desk, LessonChoice, Opening, Resumable, Standing, Start, Tutor, next_lesson,
};
use crate::session::{Course, Fading, Sign, View};
use crate::sketch::{spelled, tell, told_words};
use crate::text::{HARD_SPACE, Manner, Prose, SOFT_SPACE, Slot, Words, bound};
use crate::units::number_text;
use people::Chosen;
use std::io::{self, BufRead, Write};

/// How long a line of prose may grow before it is broken.
const WIDTH: usize = 78;

/// How many bytes of a line are read; of a longer one the rest is passed over.
const LONGEST_READ: usize = 1 << 20;

mod again;
mod answered;
mod build;
mod fade;
mod people;
mod pivot;
mod settings;
#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests;

/// Runs the dialogue until the learner leaves or the input ends. `echo` repeats each line behind
/// the prompt, for transcripts.
///
/// # Errors
/// When the output cannot be written or the input not read.
pub fn run(
    desk: &mut dyn Desk,
    start: Start,
    notes: Vec<Prose>,
    echo: bool,
    input: &mut dyn BufRead,
    output: &mut dyn Write,
) -> io::Result<()> {
    let mut dialogue = Dialogue {
        words: desk.words(),
        of_problem: None,
        desk,
        echo,
        input,
        after_return: false,
        finished: None,
        faded: Fading::All,
        draft: None,
        manner: Manner::default(),
        ascii: false,
        output,
    };
    dialogue.take_settings();
    dialogue.say(&dialogue.words.say("plain.welcome", &[]))?;
    if dialogue.desk.has_kept_all() {
        dialogue.say(&dialogue.words.say("plain.safe", &[]))?;
    }
    dialogue.at_work()?;
    for note in notes {
        dialogue.say(&note)?;
    }
    match start {
        Start::Problem(opening) => match dialogue.work(opening)? {
            After::Leave => Ok(()),
            After::Menu => dialogue.menu(),
        },
        Start::Lesson(lesson) => match dialogue.desk.open(lesson) {
            Ok(opening) => match dialogue.work(opening)? {
                After::Leave => Ok(()),
                After::Menu => dialogue.menu(),
            },
            Err(prose) => {
                dialogue.say(&prose)?;
                dialogue.menu()
            }
        },
        Start::Menu => dialogue.menu(),
    }
}

/// What comes after a problem.
enum After {
    /// The list of lessons.
    Menu,
    /// The end.
    Leave,
}

struct Dialogue<'a> {
    desk: &'a mut dyn Desk,
    words: Words,
    /// Those of the problem that is open.
    of_problem: Option<Words>,
    echo: bool,
    input: &'a mut dyn BufRead,
    /// The last line ended with a carriage return; a line feed right after it belongs to it.
    after_return: bool,
    /// The lesson of the problem that was finished last: Enter draws from it again.
    finished: Option<usize>,
    /// How a fresh problem of it is taken.
    faded: Fading,
    /// A problem that is being built, while one is at the list.
    draft: Option<Builder>,
    /// How texts are shown.
    manner: Manner,
    /// Only ASCII is shown.
    ascii: bool,
    output: &'a mut dyn Write,
}

impl Dialogue<'_> {
    /// The list of lessons, until one leaves.
    fn menu(&mut self) -> io::Result<()> {
        loop {
            let unfinished = self.desk.unfinished();
            let lessons = self.desk.lessons();
            let again = self.finished.filter(|_| unfinished.is_none());
            let next = next_lesson(&lessons).unwrap_or(0);
            let choose = match again {
                Some(_) => "plain.choose-again",
                None => "plain.choose",
            };
            let enter = unfinished.as_ref().map_or(next + 1, |_| 0);
            let slots = [("number", Slot::Word(enter.to_string()))];
            self.say(&self.words.say(choose, &slots))?;
            if let Some(left) = &unfinished {
                self.left(left, "plain.carry-on", 0)?;
            }
            for (index, lesson) in lessons.iter().enumerate() {
                self.lesson(index + 1, lesson)?;
            }
            let older = self.desk.older_unfinished();
            for (index, left) in older.iter().enumerate() {
                self.left(left, "plain.older", lessons.len() + index + 1)?;
            }
            let own = lessons.len() + older.len() + 1;
            let slots = [("number", Slot::Word(own.to_string()))];
            let key = match self.draft {
                Some(_) => "plain.build.go-on",
                None => "plain.build.choice",
            };
            self.say(&self.words.say(key, &slots))?;
            let earlier = !self.desk.earlier().is_empty();
            if earlier {
                let slots = [("number", Slot::Word((own + 1).to_string()))];
                self.say(&self.words.say("plain.again.choice", &slots))?;
            }
            self.offer(&lessons, next)?;
            let line = match self.choice()? {
                Some(Chosen::Line(line)) => line,
                Some(Chosen::Anew) => continue,
                None => return self.farewell(),
            };
            let typed = line.trim().to_lowercase();
            let (typed, fading) = self.fading_behind(&typed);
            let number = typed.parse::<usize>().ok();
            if number == Some(own) || is_one_of(&self.words, "build.own", &typed) {
                match self.own_problem()? {
                    After::Leave => return Ok(()),
                    After::Menu => continue,
                }
            }
            let looks = earlier && number == Some(own + 1);
            if looks || is_one_of(&self.words, "again.own", &typed) {
                match self.look_again()? {
                    true => continue,
                    false => return self.farewell(),
                }
            }
            let by_name = lessons.iter().position(|lesson| lesson.id == typed);
            let opened = match (number, &unfinished) {
                (Some(0), Some(_)) => self.desk.resume(),
                (None, Some(_)) if typed.is_empty() && fading.is_none() => self.desk.resume(),
                (None, None) if typed.is_empty() => match again {
                    Some(again) => self.open(again, fading.unwrap_or(self.faded)),
                    None => self.open(next, fading.unwrap_or_default()),
                },
                (None, _) if typed.is_empty() => self.open(next, fading.unwrap_or_default()),
                (Some(number), _) if (1..=lessons.len()).contains(&number) => {
                    self.open(number - 1, fading.unwrap_or_default())
                }
                (Some(number), _) if (1..=lessons.len() + older.len()).contains(&number) => {
                    self.desk.resume_older(number - 1 - lessons.len())
                }
                _ if by_name.is_some() => {
                    self.open(by_name.unwrap_or(0), fading.unwrap_or_default())
                }
                (None, Some(_)) if is_one_of(&self.words, "plain.put-away", &typed) => {
                    self.desk.decline();
                    Err(self.words.say("plain.away", &[]))
                }
                _ if is_one_of(&self.words, "command.quit", &typed) => {
                    return self.farewell();
                }
                _ => Err(self.words.say("plain.choice-unclear", &[])),
            };
            match opened {
                Ok(opening) => {
                    if let After::Leave = self.work(opening)? {
                        return Ok(());
                    }
                }
                Err(prose) => self.say(&prose)?,
            }
        }
    }

    /// A lesson among the choices: what it teaches, what it builds on, how the learner stands.
    fn lesson(&mut self, number: usize, lesson: &LessonChoice) -> io::Result<()> {
        let slots = [
            ("number", Slot::Word(number.to_string())),
            ("title", Slot::Word(lesson.title.clone())),
            ("teaches", Slot::Word(lesson.teaches.clone())),
        ];
        let mut told = self.words.say("plain.lesson", &slots);
        let bases = lesson.builds_on.iter().map(|base| (base + 1).to_string());
        let bases: Vec<String> = bases.collect();
        if !bases.is_empty() {
            let slots = [("numbers", Slot::Word(bases.join(", ")))];
            told = told.then(self.words.say("plain.builds-on", &slots));
        }
        let standing = match lesson.standing {
            Standing::New => "plain.standing.new",
            Standing::Begun => "plain.standing.begun",
            Standing::Mastered => "plain.standing.mastered",
            Standing::Due => "plain.standing.due",
        };
        self.say(&told.then(self.words.say(standing, &[])))
    }

    /// A problem that was left, among the choices.
    fn left(&mut self, left: &Resumable, key: &str, number: usize) -> io::Result<()> {
        let key = match left.lines {
            1 => format!("{key}.one"),
            _ => format!("{key}.many"),
        };
        let slots = [
            ("number", Slot::Word(number.to_string())),
            ("title", Slot::Word(left.title.clone())),
            ("lines", Slot::Word(left.lines.to_string())),
        ];
        self.say(&self.words.say(&key, &slots))
    }

    /// One problem.
    fn work(&mut self, opening: Opening) -> io::Result<After> {
        // What stands around a problem is told in its language.
        self.of_problem = opening.session.words();
        self.take_settings();
        let after = self.work_at(opening);
        self.of_problem = None;
        self.take_settings();
        after
    }

    fn work_at(&mut self, opening: Opening) -> io::Result<After> {
        let Opening {
            session: mut tutor,
            resumed,
            whole: _,
            mut first,
            notes,
        } = opening;
        let view = tutor.view();
        self.blank()?;
        self.line(&self.manner.text(&view.title))?;
        self.paragraph(&self.manner.text(&view.statement))?;
        let g = number_text(tutor.problem().gravity());
        self.say(&self.words.say("solve.gravity", &[("g", Slot::Value(g))]))?;
        self.paragraph(&view.caution)?;
        for note in notes {
            self.say(&note)?;
        }
        if resumed {
            self.say(&self.words.say("plain.resumed", &[]))?;
            let standing = view.lines.iter().filter(|line| line.standing);
            let numbered = standing.filter_map(|line| Some((line.number?, line)));
            let mut last = None;
            for (number, line) in numbered {
                self.line(&format!("{number}. {} ({})", line.text, line.verdict))?;
                last = Some(line);
            }
            // A line that waits to be mended is told with its thought, as it was when it was typed.
            if let Some(waiting) = last.filter(|_| view.waits) {
                self.say(&waiting.message)?;
            }
            let shown = view.lines.iter().filter(|line| line.sign == Sign::Shown);
            for line in shown {
                self.shown(line)?;
            }
        }
        self.diagram(tutor.as_ref(), &view, None)?;
        if view.course == Course::On && first.is_none() {
            self.question(&view)?;
        }
        let mut drawn = view.marks.clone();
        // Behind a first line of its own the question is told whatever it is.
        let mut asked = match first {
            Some(_) => Prose::default(),
            None => view.question,
        };
        while tutor.view().course == Course::On {
            let line = match first.take() {
                Some(first) => Some(first),
                None => self.ask()?,
            };
            let Some(line) = line else {
                self.desk.closed(false);
                self.farewell()?;
                return Ok(After::Leave);
            };
            if self.named(&line, true)? || self.set(&line)? {
                continue;
            }
            let line = match self.pivot(&line, &tutor.view())? {
                pivot::Chosen::Line(line) => line,
                pivot::Chosen::Told => continue,
            };
            for note in self.desk.entered(&line) {
                self.say(&note)?;
            }
            let turn = tutor.submit(&line);
            let written = self.desk.judged(&turn);
            // That one can go on next time is true only of what was saved.
            if turn.course != Course::Quit || self.desk.has_kept_all() {
                self.answer(&turn)?;
            }
            for note in written {
                self.say(&note)?;
            }
            let view = tutor.view();
            if asks_for_help(&self.words, &line) {
                self.names(&view)?;
            }
            if turn.course == Course::On {
                self.ask_name()?;
                if view.marks != drawn {
                    self.diagram(tutor.as_ref(), &view, Some(&drawn))?;
                    drawn = view.marks.clone();
                }
                // Said once; an empty line asks for it again.
                if view.question != asked || line.trim().is_empty() {
                    self.question(&view)?;
                    asked = view.question;
                }
            }
        }
        let view = tutor.view();
        if view.course == Course::Quit {
            self.desk.closed(false);
            self.farewell()?;
            return Ok(After::Leave);
        }
        for prose in &view.summary {
            self.say(prose)?;
        }
        for worked in &view.keys {
            self.say(&worked.title)?;
            for line in &worked.lines {
                self.say(&line.told)?;
            }
        }
        self.finished = self.desk.open_lesson();
        self.faded = view.fading.next();
        self.desk.closed(true);
        self.blank()?;
        Ok(After::Menu)
    }

    /// The diagram in words: only what is new since it was told last.
    fn diagram(
        &mut self,
        tutor: &dyn Tutor,
        view: &View,
        before: Option<&crate::sketch::Marks>,
    ) -> io::Result<()> {
        if !view.scene.is_empty() {
            let told = self.general_diagram(view, before);
            if told.is_empty() {
                return Ok(());
            }
            let told: Vec<String> = told.iter().map(ToString::to_string).collect();
            let slots = [("told", Slot::Word(told.join(" ")))];
            return self.say(&self.words.say("plain.diagram", &slots));
        }
        let values = tutor.problem().values();
        let sentences = |marks| told_words(&tell(tutor.problem(), &values, marks), &self.words);
        let known = before.map(sentences).unwrap_or_default();
        let fresh: Vec<Prose> = sentences(&view.marks)
            .into_iter()
            .filter(|prose| !known.contains(prose))
            .collect();
        if fresh.is_empty() {
            return Ok(());
        }
        let text: Vec<String> = fresh.iter().map(ToString::to_string).collect();
        let slots = [("told", Slot::Word(text.join(" ")))];
        self.say(&self.words.say("plain.diagram", &slots))
    }

    /// What is new in the drawing of bodies in general: the scene once, then each force.
    fn general_diagram(&self, view: &View, before: Option<&crate::sketch::Marks>) -> Vec<Prose> {
        let mut told = match before {
            Some(_) => Vec::new(),
            None => view.scene.clone(),
        };
        if let Some(sheet) = &view.sheet {
            let sentences = |marks| told_words(&sheet.tell(marks), &self.words);
            let known = before.map(sentences).unwrap_or_default();
            let fresh = sentences(&view.marks).into_iter();
            told.extend(fresh.filter(|prose| !known.contains(prose)));
        }
        told
    }

    /// The names at hand, each with its value if it has one: `W1 = 78.4 N, α (type alpha) = 35°`.
    fn names(&mut self, view: &View) -> io::Result<()> {
        let told = view.names.iter().map(|name| {
            let slots = [
                ("name", Slot::Name(name.shown.clone())),
                ("typed", Slot::Name(name.typed.clone())),
            ];
            let shown = match name.shown.is_ascii() {
                true => name.shown.clone(),
                false => self.words.say("plain.name.typed", &slots).to_string(),
            };
            match &name.value {
                Some(value) => format!("{shown} = {value}"),
                None => shown,
            }
        });
        let names: Vec<String> = told.collect();
        if names.is_empty() {
            return Ok(());
        }
        let slots = [("names", Slot::Value(names.join(", ")))];
        self.say(&self.words.say("plain.names", &slots))
    }

    fn question(&mut self, view: &View) -> io::Result<()> {
        self.blank()?;
        self.say(&view.question)?;
        for (place, choice) in view.choices.iter().enumerate() {
            let slots = [
                ("number", Slot::Word((place + 1).to_string())),
                ("choice", Slot::Prose(choice.clone())),
            ];
            self.say(&self.words.say("plain.choice", &slots))?;
        }
        if view.example.is_empty() {
            return Ok(());
        }
        self.say(&self.words.say(
            "plain.example",
            &[("example", Slot::Prose(view.example.clone()))],
        ))
    }

    /// Asks for a line; `None` at the end of the input.
    fn ask(&mut self) -> io::Result<Option<String>> {
        self.output.write_all(b"> ")?;
        self.output.flush()?;
        let Some(bytes) = self.read_line()? else {
            self.blank()?;
            return Ok(None);
        };
        let line = String::from_utf8_lossy(&bytes).into_owned();
        if self.echo {
            let shown: String = crate::text::printable(&line).chars().take(WIDTH).collect();
            self.line(&shown)?;
        }
        Ok(Some(line))
    }

    /// The bytes of the next line, which a line feed, a carriage return or both end; `None` at the
    /// end of the input. A line without end must not fill the memory; what is too long is refused
    /// later.
    fn read_line(&mut self) -> io::Result<Option<Vec<u8>>> {
        let mut line = Vec::new();
        let mut begun = false;
        loop {
            let read = match self.input.fill_buf() {
                Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
                read => read?,
            };
            if read.is_empty() {
                return Ok(begun.then_some(line));
            }
            if std::mem::take(&mut self.after_return) && read[0] == b'\n' {
                self.input.consume(1);
                continue;
            }
            begun = true;
            let end = read.iter().position(|byte| matches!(byte, b'\n' | b'\r'));
            let part = &read[..end.unwrap_or(read.len())];
            let room = LONGEST_READ - line.len();
            line.extend_from_slice(&part[..part.len().min(room)]);
            self.after_return = end.is_some_and(|end| read[end] == b'\r');
            let taken = end.map_or(read.len(), |end| end + 1);
            self.input.consume(taken);
            if end.is_some() {
                return Ok(Some(line));
            }
        }
    }

    /// What is said at the end: only what is true.
    fn farewell(&mut self) -> io::Result<()> {
        let key = match (self.desk.has_kept_all(), &self.draft) {
            (true, None) => "plain.end",
            (true, Some(_)) => "plain.build.end",
            (false, _) => "plain.unsaved",
        };
        self.say(&self.words.say(key, &[]))
    }

    fn say(&mut self, prose: &Prose) -> io::Result<()> {
        self.paragraph(&self.manner.prose(prose).to_string())
    }

    /// Prose broken at blanks, but not between a number and its unit.
    fn paragraph(&mut self, text: &str) -> io::Result<()> {
        for paragraph in bound(text).lines() {
            let mut line = String::new();
            for word in paragraph.split(' ') {
                let wide = word.chars().count() > WIDTH;
                for part in word.split(|c| wide && c == SOFT_SPACE) {
                    let longer = line.chars().count() + part.chars().count() + 1 > WIDTH;
                    if longer && !line.is_empty() {
                        self.line(&line)?;
                        line.clear();
                    }
                    if !line.is_empty() {
                        line.push(' ');
                    }
                    line.push_str(&part.replace([HARD_SPACE, SOFT_SPACE], " "));
                }
            }
            self.line(&line)?;
        }
        Ok(())
    }

    fn line(&mut self, text: &str) -> io::Result<()> {
        if self.ascii {
            return writeln!(self.output, "{}", spelled(text));
        }
        writeln!(self.output, "{text}")
    }

    fn blank(&mut self) -> io::Result<()> {
        writeln!(self.output)
    }
}

/// True for a call for help and for any other question.
fn asks_for_help(words: &Words, line: &str) -> bool {
    let typed = line.trim().to_lowercase();
    typed.ends_with('?') || is_one_of(words, "command.help", &typed)
}

/// True for the words that the catalogue lists under this key.
fn is_one_of(words: &Words, key: &str, typed: &str) -> bool {
    let list = words.word(key);
    list.split(',').any(|word| word.trim() == typed)
}
