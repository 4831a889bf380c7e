//! What a session gives to a screen: plain data, already in words.

use super::pivots::PivotPlace;
use super::worked::Fading;
use crate::sketch::{Marks, Sheet};
use crate::text::{Prose, Span};
use std::sync::Arc;

/// The kind of a verdict, for its sign and colour. The words say the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Right.
    Right,
    /// Right, rounded on the way.
    Rounded,
    /// The right way, with the learner's own earlier value or relation.
    Follows,
    /// Noted: true, or judged only when it is used.
    Noted,
    /// Nearly: the unit or the figures are missing something.
    Incomplete,
    /// Does not hold.
    Wrong,
    /// Not understood.
    Unclear,
    /// A line of an example.
    Shown,
    /// No verdict: an answer to a command such as `help`.
    Talk,
}

/// A line that was entered, with everything said about it.
#[derive(Clone, Debug, PartialEq)]
pub struct LineView {
    /// Its number in the working, from 1. Lines that are only commands have none.
    pub number: Option<usize>,
    /// As typed, safe to show.
    pub text: String,
    /// What it was an answer to, in a word or two: "weight of the lamp".
    pub about: String,
    /// The kind of verdict.
    pub sign: Sign,
    /// The verdict in a word or two: "right", "rounded on the way".
    pub verdict: String,
    /// What the tutor says about it.
    pub message: Prose,
    /// How the line was read, in mathematical layout, with its value where that may be shown.
    pub reading: Option<String>,
    /// The stretch of `text` where something is wrong; a caret stands under it.
    pub caret: Option<Span>,
    /// Hints given after it, in order.
    pub hints: Vec<Prose>,
    /// False once it was taken back or replaced.
    pub standing: bool,
}

/// How far a step is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Progress {
    /// Established by the learner.
    Done,
    /// Gone past without an answer, or shown.
    Passed,
    /// Asked now.
    Now,
    /// Still to come.
    Ahead,
}

/// One step of the walk.
#[derive(Clone, Debug, PartialEq)]
pub struct StepView {
    /// Its name in a word or two. Names nothing that the learner has not said yet.
    pub title: String,
    /// How far it is.
    pub progress: Progress,
    /// Its result as the learner has it, such as "W1 = 78.4 N".
    pub result: Option<String>,
}

/// A name that may be typed now.
#[derive(Clone, Debug, PartialEq)]
pub struct NameView {
    /// As shown: `W1⊥`.
    pub shown: String,
    /// As typed on a plain keyboard: `W1perp`.
    pub typed: String,
    /// What it is: "mass of the lamp".
    pub meaning: String,
    /// Its value as printed or as found, if it has one yet.
    pub value: Option<String>,
}

/// How a session stands after a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Course {
    /// The walk goes on.
    On,
    /// The last step is established (or passed): the summary is shown.
    Finished,
    /// The learner wants to leave.
    Quit,
}

/// The truths of lines that are no part of the working.
const ORDERS: &[&str] = &[
    "command",
    "estimate",
    "hint",
    "shown",
    "skipped",
    "withdrawn",
    "carried",
    "disputed",
    "not-done",
    "freely",
    "guided",
    "reason",
];

/// What a journal keeps of a verdict.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// The truth, as one stable word.
    pub truth: String,
    /// The steps established, as stable words.
    pub progress: Vec<String>,
    /// The mistakes named, most likely first.
    pub mistakes: Vec<String>,
    /// The mistakes named of earlier lines that this line has put right.
    pub confirmed: Vec<String>,
    /// The stage of the hint shown, from 1.
    pub hint: Option<u8>,
    /// What was said.
    pub message: String,
}

impl Kept {
    /// True if a line whose truth was kept as this word is a line of the working, and no order.
    pub fn is_working(truth: &str) -> bool {
        !truth.is_empty() && !ORDERS.contains(&truth)
    }
}

/// The verdict that a kept truth stands for.
pub(super) fn verdict_of(truth: &str) -> (Sign, &'static str) {
    match truth {
        "holds" => (Sign::Right, "verdict.right"),
        "rounded" => (Sign::Rounded, "verdict.rounded"),
        "follows" => (Sign::Follows, "verdict.follows"),
        "too-few-figures" => (Sign::Incomplete, "verdict.figures"),
        "too-many-figures" => (Sign::Incomplete, "verdict.figures-many"),
        "wrong-unit" => (Sign::Incomplete, "verdict.unit"),
        "unit-missing" => (Sign::Incomplete, "verdict.unit-missing"),
        "mismatched" => (Sign::Wrong, "verdict.mismatch"),
        "wrong" => (Sign::Wrong, "verdict.wrong"),
        "not-understood" | "too-long" => (Sign::Unclear, "verdict.unclear"),
        truth if Kept::is_working(truth) => (Sign::Noted, "verdict.noted"),
        _ => (Sign::Talk, "verdict.none"),
    }
}

/// The answer to one entered line.
#[derive(Clone, Debug, PartialEq)]
pub struct Turn {
    /// The line and what is said about it.
    pub line: LineView,
    /// Lines of an example that are shown behind it.
    pub shown: Vec<LineView>,
    /// The question asked next (perhaps the same again).
    pub question: Prose,
    /// True if the question is another one than before.
    pub moved_on: bool,
    /// How the session stands.
    pub course: Course,
    /// For the journal.
    pub kept: Kept,
}

/// Everything that a screen shows of a session.
#[derive(Clone, Debug, PartialEq)]
pub struct View {
    /// One line that names the problem.
    pub title: String,
    /// The problem in words.
    pub statement: String,
    /// Words of caution.
    pub caution: String,
    /// The drawing of bodies in general in words, a sentence each.
    pub scene: Vec<Prose>,
    /// Their drawing, where one can be made.
    pub sheet: Option<Arc<Sheet>>,
    /// The steps of the walk.
    pub steps: Vec<StepView>,
    /// The working so far: every line, oldest first.
    pub lines: Vec<LineView>,
    /// True while lines are taken in any order: the steps are what the problem asks for then, and
    /// none is asked.
    pub freely: bool,
    /// True while the last line waits to be mended, gone on with or shown.
    pub waits: bool,
    /// True while an estimate is asked: an empty line passes it over.
    pub estimates: bool,
    /// What is asked now.
    pub question: Prose,
    /// What may be chosen as an answer to it, by numbers from 1; empty where a line is to be typed.
    pub choices: Vec<Prose>,
    /// How an answer to it may look.
    pub example: Prose,
    /// The names at hand.
    pub names: Vec<NameView>,
    /// The places of the drawing about which moments may be taken, from the foot to the tip.
    pub pivots: Vec<PivotPlace>,
    /// What to draw now: the latest stage, and only what the learner has said.
    pub marks: Marks,
    /// Earlier stages of the diagram, oldest first, the present one last.
    pub stages: Vec<Marks>,
    /// How the session stands.
    pub course: Course,
    /// How much of the problem is the learner's.
    pub fading: Fading,
    /// After the end: what went well, what the slips were; the last says what to do next.
    pub summary: Vec<Prose>,
    /// How many sentences of the summary, right before its last, name slips.
    pub slips: usize,
    /// After the end: the whole working by the learner's own way, then by another.
    pub keys: Vec<Worked>,
}

/// The whole working, one way.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked {
    /// Which way.
    pub title: Prose,
    /// Its lines.
    pub lines: Vec<WorkedLine>,
}

/// A line of a whole working.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkedLine {
    /// True if it heads the lines after it.
    pub heading: bool,
    /// What it says.
    pub told: Prose,
}
