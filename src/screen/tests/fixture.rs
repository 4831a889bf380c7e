//! A problem, a tutor with canned answers and a desk that remembers what it was asked.

use crate::problem::{
    Body, Direction, ForceId, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference,
    Rope, Side, Support, SupportKind, Tilt,
};
use crate::screen::model::{Model, Page, Working};
use crate::screen::theme::{Depth, Theme};
use crate::screen::{Desk, LessonChoice, Opening, Resumable, Tutor};
use crate::session::{Course, Kept, LineView, NameView, Progress, Sign, StepView, Turn, View};
use crate::sketch::{AngleMark, ComponentMark, DistanceMark, ForceMark, Marks, Stage};
use crate::text::{Piece, Prose, Span, Symbol, Tag, Words};
use crate::units::Dimension;

fn given(symbol: &str, meaning: &str, written: &str, value: f64, dimension: Dimension) -> Given {
    Given {
        symbol: Symbol::new(symbol),
        meaning: meaning.into(),
        value,
        written: written.into(),
        dimension,
    }
}

/// A gangway that leans on its hinge, held level by a rope, with a crate and its own weight.
pub(super) fn gangway() -> Problem {
    let upright = |symbol: &str, noun: &str, at, mass| Load {
        symbol: Symbol::new(symbol),
        noun: noun.into(),
        at,
        kind: LoadKind::Mass(mass),
    };
    Problem::new(Parts {
        title: "The gangway of the ferry".into(),
        statement: "A gangway of 6.00 m and 42.0 kg is hinged to the quay at its lower end and \
                    rises at 35° from the horizontal, to the right. A level rope holds it at its \
                    upper end. A crate of 18.0 kg stands 4.50 m from the hinge. How strong is \
                    the pull of the rope?"
            .into(),
        caution: "For learning only: never choose a real rope from it.".into(),
        givens: vec![
            given(
                "L",
                "length of the gangway",
                "6.00 m",
                6.0,
                Dimension::LENGTH,
            ),
            given(
                "m_g",
                "mass of the gangway",
                "42.0 kg",
                42.0,
                Dimension::MASS,
            ),
            given("m_1", "mass of the crate", "18.0 kg", 18.0, Dimension::MASS),
            given(
                "d_1",
                "distance from the hinge to the crate",
                "4.50 m",
                4.5,
                Dimension::LENGTH,
            ),
            given(
                "θ",
                "angle of the gangway from the horizontal",
                "35°",
                35f64.to_radians(),
                Dimension::ANGLE,
            ),
        ],
        body: Body {
            noun: "gangway".into(),
            length: GivenId(0),
            mass: Some(GivenId(1)),
            weight_symbol: Symbol::new("W_g"),
            centre: Place::Middle,
            tilt: Tilt::Rising {
                angle: GivenId(4),
                from: Reference::Horizontal,
            },
            towards: Side::Right,
        },
        supports: vec![Support {
            symbol: Symbol::new("H"),
            noun: "hinge".into(),
            at: Place::Foot,
            kind: SupportKind::Hinge,
        }],
        ropes: vec![Rope {
            symbol: Symbol::new("T"),
            noun: "rope".into(),
            at: Place::Tip,
            direction: Direction::Level(Side::Left),
        }],
        loads: vec![upright("W_1", "crate", Place::At(GivenId(3)), GivenId(2))],
        gravity: 9.8,
        accepted_gravity: Vec::new(),
        figures: 3,
    })
    .unwrap()
}

fn prose(text: &str) -> Prose {
    Words::parse(&serde_json::json!({ "said": text }).to_string())
        .unwrap()
        .say("said", &[])
}

fn line(number: Option<usize>, text: &str, sign: Sign, verdict: &str, said: &str) -> LineView {
    LineView {
        number,
        text: text.into(),
        about: String::new(),
        sign,
        verdict: verdict.into(),
        message: prose(said),
        reading: None,
        caret: None,
        hints: Vec::new(),
        standing: true,
    }
}

/// Lines with different signs, a hint and a caret.
fn working() -> Vec<LineView> {
    let mut lines = vec![
        line(
            Some(1),
            "forces: Wg, W1, T, H",
            Sign::Right,
            "right",
            "These four act on the gangway, and no others.",
        ),
        line(
            Some(2),
            "Wg = 42*9.8",
            Sign::Right,
            "right",
            "The weight of the gangway.",
        ),
        line(
            Some(3),
            "W1 = 180 N",
            Sign::Incomplete,
            "nearly",
            "With three figures it is another value.",
        ),
        line(
            Some(4),
            "W1 = 18*9.8",
            Sign::Rounded,
            "rounded on the way",
            "The weight of the crate.",
        ),
        line(
            None,
            "names",
            Sign::Talk,
            "",
            "The names at hand are listed below.",
        ),
        line(
            Some(5),
            "Wg⊥ = Wg*sn(35)",
            Sign::Unclear,
            "not understood",
            "The name `sn` is not known here. Did you mean `sin`?",
        ),
        line(
            Some(6),
            "Wg⊥ = Wg*sin(35)",
            Sign::Wrong,
            "does not hold",
            "This is the part of the weight **along** the gangway. The part that turns it lies \
             across.",
        ),
    ];
    for (line, about) in [
        (0, "the forces"),
        (1, "weight of the gangway"),
        (3, "weight of the crate"),
        (6, "part of Wg across the gangway"),
    ] {
        lines[line].about = about.into();
    }
    lines[1].reading = Some("Wg = 42 kg · 9.8 m/s² = 412 N".into());
    lines[2].standing = false;
    lines[3].reading = Some("W1 = 18 kg · 9.8 m/s² = 176 N".into());
    lines[5].caret = Some(Span::new("Wg⊥ = Wg*".len(), "Wg⊥ = Wg*sn".len()));
    lines[6].caret = Some(Span::new("Wg⊥ = Wg*".len(), "Wg⊥ = Wg*sin".len()));
    lines[6].hints = vec![prose(
        "Look at the drawing: which side of the triangle at Wg lies at the angle θ, and which \
         opposite?",
    )];
    lines
}

fn marks(stage: Stage) -> Marks {
    let mut marks = Marks {
        stage,
        givens: true,
        ..Marks::default()
    };
    if stage == Stage::Scene {
        return marks;
    }
    marks.pivot = Some(Place::Foot);
    for (force, label) in [
        (ForceId::OwnWeight, "Wg"),
        (ForceId::Load(0), "W1"),
        (ForceId::Rope(0), "T"),
        (ForceId::Support(0), "H"),
    ] {
        marks.forces.push(ForceMark {
            force,
            label: label.into(),
            direction: None,
        });
        if force == ForceId::Support(0) {
            continue;
        }
        if stage == Stage::Angles {
            marks.angles.push(AngleMark {
                force,
                label: "θ".into(),
            });
        }
        if stage == Stage::Turning {
            marks.components.push(ComponentMark {
                force,
                label: format!("{label}⊥"),
            });
            marks.distances.push(DistanceMark {
                force,
                label: format!("d{label}"),
            });
        }
    }
    marks
}

fn step(title: &str, progress: Progress) -> StepView {
    StepView {
        title: title.into(),
        progress,
        result: None,
    }
}

fn name(shown: &str, typed: &str, meaning: &str, value: Option<&str>) -> NameView {
    NameView {
        shown: shown.into(),
        typed: typed.into(),
        meaning: meaning.into(),
        value: value.map(str::to_owned),
    }
}

/// A session as it is before the first line, or in the midst.
pub(super) fn view(begun: bool) -> View {
    let problem = gangway();
    let steps = [
        "forces",
        "weight",
        "weight of the crate",
        "part across",
        "arm",
        "balance",
        "pull",
    ];
    let done = if begun { 3 } else { 0 };
    let stages = if begun {
        vec![
            marks(Stage::Scene),
            marks(Stage::Forces),
            marks(Stage::Angles),
        ]
    } else {
        vec![marks(Stage::Scene)]
    };
    let question = if begun {
        "How large is the part of Wg that lies across the gangway?"
    } else {
        "Which forces act on the gangway? Name them all, in any order."
    };
    let example = if begun {
        "`Wg⊥ = ...`"
    } else {
        "`forces: weight, rope`"
    };
    let mut names = vec![
        name("L", "L", "length of the gangway", Some("6.00 m")),
        name("mg", "mg", "mass of the gangway", Some("42.0 kg")),
        name("m1", "m1", "mass of the crate", Some("18.0 kg")),
        name(
            "d1",
            "d1",
            "distance from the hinge to the crate",
            Some("4.50 m"),
        ),
        name(
            "θ",
            "theta",
            "angle of the gangway from the horizontal",
            Some("35°"),
        ),
    ];
    if begun {
        names.push(name("Wg", "Wg", "weight of the gangway", Some("412 N")));
        names.push(name("W1", "W1", "weight of the crate", Some("176 N")));
        names.push(name("Wg⊥", "Wgperp", "part of Wg across the gangway", None));
        names.push(name("T", "T", "pull of the rope", None));
    }
    View {
        title: problem.title().to_owned(),
        statement: problem.statement().to_owned(),
        caution: problem.caution().to_owned(),
        steps: steps
            .iter()
            .enumerate()
            .map(|(place, title)| {
                step(
                    title,
                    match place.cmp(&done) {
                        std::cmp::Ordering::Less => Progress::Done,
                        std::cmp::Ordering::Equal => Progress::Now,
                        std::cmp::Ordering::Greater => Progress::Ahead,
                    },
                )
            })
            .collect(),
        lines: if begun { working() } else { Vec::new() },
        question: prose(question),
        example: prose(example),
        names,
        marks: stages.last().cloned().unwrap(),
        stages,
        course: Course::On,
        summary: Vec::new(),
    }
}

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
            question: self.view.question.clone(),
            moved_on: false,
            course: self.view.course,
            kept: Kept {
                truth: "right".into(),
                progress: Vec::new(),
                mistakes: Vec::new(),
                hint: None,
                message: String::new(),
            },
        }
    }

    fn view(&self) -> View {
        self.view.clone()
    }

    fn preview(&self, line: &str) -> Option<String> {
        Some(line.replace('*', " · "))
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
    pub(super) full_disk: bool,
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
        };
        vec![
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
        ]
    }

    fn open(&mut self, lesson: usize) -> Result<Opening, Prose> {
        self.asked.push(format!("open {lesson}"));
        if lesson == 2 {
            return Err(prose("This lesson cannot be opened."));
        }
        Ok(Opening {
            session: Box::new(Canned::new(view(false))),
            resumed: false,
            notes: Vec::new(),
        })
    }

    fn unfinished(&mut self) -> Option<Resumable> {
        self.unfinished.clone()
    }

    fn resume(&mut self) -> Result<Opening, Prose> {
        self.asked.push("resume".into());
        Ok(Opening {
            session: Box::new(Canned::new(view(true))),
            resumed: true,
            notes: Vec::new(),
        })
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
        notes: Vec::new(),
    });
    model
}

/// The problem on the screen.
pub(super) fn open(model: &mut Model) -> &mut Working {
    match &mut model.page {
        Page::Working(open) => open,
        Page::Menu(_) => panic!("no problem is open"),
    }
}

/// Ordinary words only.
pub(super) fn plain(text: &str) -> Prose {
    Prose(vec![Piece {
        tag: Tag::Plain,
        text: text.into(),
    }])
}
