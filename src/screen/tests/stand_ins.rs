//! A tutor with canned answers, and a desk that remembers what it was asked.

use super::fixture::{gangway, line, prose, view};
use crate::practice::{
    Again, Desk, Earlier, LessonChoice, Opening, People, Resumable, Standing, Tutor,
};
use crate::problem::Problem;
use crate::screen::model::{Model, Page, Working};
use crate::screen::theme::{Depth, Theme};
use crate::session::{Course, Kept, Progress, Sign, Turn, View};
use crate::text::{Formula, Prose, Settings, Words};

/// A tutor that finds every line right, ends at `finish`, and leaves at `quit`.
pub(super) struct Canned {
    pub(super) view: View,
    problem: Problem,
}

impl Canned {
    pub(super) fn new(view: View) -> Canned {
        Canned {
            view,
            problem: gangway(),
        }
    }
}

impl Tutor for Canned {
    fn submit(&mut self, text: &str) -> Turn {
        let number = self.view.lines.iter().filter_map(|line| line.number).max();
        let line = line(
            Some(number.unwrap_or(0) + 1),
            text,
            Sign::Right,
            "right",
            "It holds.",
        );
        self.view.lines.push(line.clone());
        self.view.course = match text {
            "quit" => Course::Quit,
            "finish" => Course::Finished,
            _ => Course::On,
        };
        if text == "finish" {
            self.view
                .steps
                .iter_mut()
                .for_each(|step| step.progress = Progress::Done);
            self.view.question = prose("The pull of the rope is found: **T = 489 N**.");
            self.view.example = Prose::default();
            self.view.summary = vec![
                prose("You found all four forces at once."),
                prose(
                    "Sine and cosine changed places once; the drawing of the angles shows which is which.",
                ),
            ];
        }
        Turn {
            line,
            shown: Vec::new(),
            question: self.view.question.clone(),
            moved_on: false,
            course: self.view.course,
            kept: Kept {
                truth: "right".into(),
                progress: Vec::new(),
                mistakes: Vec::new(),
                confirmed: Vec::new(),
                hint: None,
                message: String::new(),
            },
        }
    }

    fn view(&self) -> View {
        self.view.clone()
    }

    fn preview(&self, line: &str) -> Option<Formula> {
        Some(Formula::text(line.replace('*', " · ")))
    }

    fn problem(&self) -> &Problem {
        &self.problem
    }
}

/// A desk that remembers what it was asked.
#[derive(Default)]
pub(super) struct Remembering {
    pub(super) asked: Vec<String>,
    pub(super) unfinished: Option<Resumable>,
    pub(super) older: Vec<Resumable>,
    /// What was worked at before; the second cannot be looked at.
    pub(super) earlier: Vec<Earlier>,
    pub(super) full_disk: bool,
    pub(super) lesson: Option<usize>,
    pub(super) people: People,
    pub(super) settings: Settings,
    /// How the learner stands with each lesson.
    pub(super) standings: [Standing; 3],
}

impl Remembering {
    fn notes(&self) -> Vec<Prose> {
        let note = "Your line could not be saved. It is kept here and saved with your next line.";
        self.full_disk.then(|| prose(note)).into_iter().collect()
    }
}

impl Desk for Remembering {
    fn entered(&mut self, line: &str) -> Vec<Prose> {
        self.asked.push(format!("entered {line}"));
        self.notes()
    }

    fn judged(&mut self, turn: &Turn) -> Vec<Prose> {
        self.asked.push(format!("judged {}", turn.line.text));
        self.notes()
    }

    fn lessons(&self) -> Vec<LessonChoice> {
        let lesson = |id: &str, title: &str, teaches: &str| LessonChoice {
            id: id.into(),
            title: title.into(),
            teaches: teaches.into(),
            ..LessonChoice::default()
        };
        let mut lessons = vec![
            lesson(
                "shelf",
                "The shelf of the pantry",
                "Moments of vertical forces about a hinge.",
            ),
            lesson(
                "gangway",
                "The gangway of the ferry",
                "Parts of weights across a tilted body, with the angle given from the horizontal \
                 or from the vertical, and the pull of a level rope.",
            ),
            lesson(
                "crane",
                "The jib of the crane",
                "Both parts of the force of a hinge.",
            ),
        ];
        lessons[1].builds_on = vec![0];
        lessons[2].builds_on = vec![0];
        for (lesson, standing) in lessons.iter_mut().zip(self.standings) {
            lesson.standing = standing;
        }
        lessons
    }

    fn people(&self) -> People {
        self.people.clone()
    }

    fn words(&self) -> Words {
        Words::of(self.settings.language.unwrap_or_default())
    }

    fn settings(&self) -> Settings {
        self.settings
    }

    fn settle(&mut self, settings: Settings) -> Vec<Prose> {
        self.settings = settings;
        self.asked.push("settle".into());
        self.notes()
    }

    fn call(&mut self, typed: &str, at_problem: bool) -> Result<Prose, Prose> {
        self.asked.push(format!("call {typed:?} {at_problem}"));
        self.people.ask = false;
        match typed {
            "" => Ok(Prose::default()),
            "9" => Err(prose("Nobody here has this number.")),
            name => {
                self.people.name = Some(name.into());
                Ok(prose(&format!(
                    "{name}: your lines are kept under this name."
                )))
            }
        }
    }

    fn open(&mut self, lesson: usize) -> Result<Opening, Prose> {
        self.asked.push(format!("open {lesson}"));
        if lesson == 2 {
            return Err(prose("This lesson cannot be opened."));
        }
        self.lesson = Some(lesson);
        Ok(Opening {
            session: Box::new(Canned::new(view(false))),
            resumed: false,
            whole: true,
            first: None,
            notes: Vec::new(),
        })
    }

    fn open_own(&mut self, problem: &Problem) -> Result<Opening, Prose> {
        self.asked.push(format!("open own {}", problem.title()));
        Ok(Opening {
            session: Box::new(Canned::new(view(false))),
            resumed: false,
            whole: true,
            first: None,
            notes: Vec::new(),
        })
    }

    fn keep_problem(&mut self, _problem: &Problem, name: &str) -> Result<Prose, Prose> {
        self.asked.push(format!("keep {name}"));
        match name {
            "taken" => Err(prose("There is a problem of that name already.")),
            _ => Ok(prose("It is kept.")),
        }
    }

    fn open_lesson(&self) -> Option<usize> {
        self.lesson
    }

    fn has_kept_all(&self) -> bool {
        !self.full_disk
    }

    fn unfinished(&mut self) -> Option<Resumable> {
        self.unfinished.clone()
    }

    fn older_unfinished(&self) -> Vec<Resumable> {
        self.older.clone()
    }

    fn resume_older(&mut self, place: usize) -> Result<Opening, Prose> {
        self.asked.push(format!("resume older {place}"));
        self.resume()
    }

    fn resume(&mut self) -> Result<Opening, Prose> {
        self.asked.push("resume".into());
        Ok(Opening {
            session: Box::new(Canned::new(view(true))),
            resumed: true,
            whole: true,
            first: None,
            notes: Vec::new(),
        })
    }

    fn earlier(&mut self) -> Vec<Earlier> {
        self.asked.push("earlier".into());
        self.earlier.clone()
    }

    fn look_again(&mut self, place: usize) -> Result<Again, Prose> {
        self.asked.push(format!("look again {place}"));
        match place {
            1 => Err(prose("That problem cannot be looked at again.")),
            _ => Ok(super::again::replay()),
        }
    }

    fn decline(&mut self) {
        self.asked.push("decline".into());
        self.unfinished = None;
    }

    fn closed(&mut self, finished: bool) {
        self.asked.push(format!("closed {finished}"));
    }
}

/// An empty screen of a size.
pub(super) fn blank(columns: u16, rows: u16) -> Model {
    let theme = Theme {
        depth: Depth::Sixteen,
        unicode: true,
    };
    Model::new(Words::english(), theme, (columns, rows))
}

/// A screen with a problem.
pub(super) fn at_problem(begun: bool, columns: u16, rows: u16) -> Model {
    let mut model = blank(columns, rows);
    model.show(Opening {
        session: Box::new(Canned::new(view(begun))),
        resumed: false,
        whole: true,
        first: None,
        notes: Vec::new(),
    });
    model
}

/// The problem on the screen.
pub(super) fn open(model: &mut Model) -> &mut Working {
    match &mut model.page {
        Page::Working(open) => open,
        _ => panic!("no problem is open"),
    }
}

/// How the line being typed is read, in one row.
pub(super) fn read_as(model: &mut Model) -> Option<String> {
    open(model).preview.as_ref().map(Formula::row)
}
