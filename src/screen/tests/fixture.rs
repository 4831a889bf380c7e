//! A problem, and views of a session at it.

use crate::problem::{
    Body, Direction, ForceId, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference,
    Rope, Side, Support, SupportKind, Tilt,
};
use crate::session::{Course, Fading, LineView, NameView, Progress, Sign, StepView, View};
use crate::sketch::{AngleMark, ComponentMark, DistanceMark, ForceMark, Marks, Stage};
use crate::text::{Prose, Span, Symbol, Words};
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
        stands: false,
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

pub(super) fn prose(text: &str) -> Prose {
    Words::parse(&serde_json::json!({ "said": text }).to_string())
        .unwrap()
        .say("said", &[])
}

pub(super) fn line(
    number: Option<usize>,
    text: &str,
    sign: Sign,
    verdict: &str,
    said: &str,
) -> LineView {
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
                size: None,
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
        "for example `Wg⊥ = ...`"
    } else {
        "for example `weight of the crate, …, down`"
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
        sheet: None,
        scene: Vec::new(),
        freely: false,
        waits: false,
        estimates: false,
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
        choices: Vec::new(),
        example: prose(example),
        names,
        pivots: Vec::new(),
        marks: stages.last().cloned().unwrap(),
        stages,
        course: Course::On,
        fading: Fading::All,
        summary: Vec::new(),
        slips: 0,
        keys: Vec::new(),
    }
}
