//! The dialogue with a tutor of canned answers: what is said, once, and in which order.

mod at_work;

use super::*;
use crate::draw::draw;
use crate::lesson::built_in;
use crate::practice::{LessonChoice, People, Standing};
use crate::problem::{ForceId, Problem};
use crate::session::{Kept, LineView, NameView, PivotPlace, Turn};
use crate::sketch::{ForceMark, Marks, Stage};
use crate::text::{Formula, Settings, Span};
use std::cell::RefCell;
use std::rc::Rc;

/// Everything that the desk and the tutor were asked, in order.
type Log = Rc<RefCell<Vec<String>>>;

fn counter() -> Problem {
    draw(&built_in()[0], 3, "en").unwrap().problem
}

/// A hinge and a tip, as where the point is asked.
fn pivots() -> Vec<PivotPlace> {
    use crate::problem::Place;
    let at = |place, name: &str, line: &str, freely: Option<&str>| PivotPlace {
        place,
        name: name.into(),
        told: Prose::plain("It is taken."),
        line: Some(line.into()),
        freely: freely.map(Into::into),
    };
    vec![
        at(Place::Foot, "the hinge", "at the hinge", None),
        at(
            Place::Tip,
            "the tip",
            "at the tip",
            Some("freely, at the tip"),
        ),
    ]
}

/// A tutor that notes every line, and knows a few lines by heart.
struct Canned {
    view: View,
    problem: Problem,
    log: Log,
}

impl Canned {
    fn new(log: &Log) -> Canned {
        Canned {
            view: View {
                title: "A sign".into(),
                statement: "A sign hangs from a beam.".into(),
                caution: "For learning only.".into(),
                scene: Vec::new(),
                sheet: None,
                freely: false,
                waits: false,
                estimates: false,
                steps: Vec::new(),
                lines: Vec::new(),
                question: Prose::plain("How large is W?"),
                choices: Vec::new(),
                example: Prose::plain("2*9.8"),
                names: [("m1", "m1", Some("12 kg")), ("α", "alpha", None)]
                    .map(|(shown, typed, value)| NameView {
                        shown: shown.into(),
                        typed: typed.into(),
                        meaning: String::new(),
                        value: value.map(str::to_owned),
                    })
                    .to_vec(),
                pivots: pivots(),
                marks: Marks::default(),
                stages: Vec::new(),
                course: Course::On,
                fading: Fading::All,
                summary: vec![Prose::plain("All found.")],
                slips: 0,
                keys: Vec::new(),
            },
            problem: counter(),
            log: Rc::clone(log),
        }
    }
}

fn answered(number: Option<usize>, text: &str, sign: Sign, message: &str) -> LineView {
    LineView {
        number,
        text: crate::text::printable(text),
        about: "weight".into(),
        sign,
        verdict: format!("{sign:?}").to_lowercase(),
        message: Prose::plain(message),
        reading: None,
        caret: None,
        hints: Vec::new(),
        standing: true,
    }
}

impl Tutor for Canned {
    fn submit(&mut self, text: &str) -> Turn {
        self.log.borrow_mut().push(format!("submit {text}"));
        let number = Some(self.view.lines.len() + 1);
        let mut line = answered(number, text, Sign::Noted, "Noted.");
        match text {
            "1 +" => {
                line = answered(number, text, Sign::Unclear, "A number should stand here.");
                line.caret = Some(Span::new(2, 3));
            }
            "3 N" => {
                line = answered(number, text, Sign::Wrong, "It does not hold.");
                line.hints = vec![Prose::plain("Look at g.")];
            }
            "2*9.8" => {
                line = answered(number, text, Sign::Right, "It holds.");
                line.reading = Some("2 · 9.8 = 19.6 N".into());
                self.view.question = Prose::plain("How large is T?");
                self.view.marks.stage = Stage::Forces;
                self.view.marks.forces.push(ForceMark {
                    force: ForceId::OwnWeight,
                    label: "W".into(),
                    direction: None,
                });
            }
            "finish" => self.view.course = Course::Finished,
            "quit" => self.view.course = Course::Quit,
            _ => {}
        }
        self.view.lines.push(line.clone());
        Turn {
            line,
            shown: Vec::new(),
            question: self.view.question.clone(),
            moved_on: text == "2*9.8",
            course: self.view.course,
            kept: Kept {
                truth: "noted".into(),
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

    fn preview(&self, _: &str) -> Option<Formula> {
        None
    }

    fn problem(&self) -> &Problem {
        &self.problem
    }
}

#[derive(Default)]
struct Stand {
    log: Log,
    left: Option<Resumable>,
    older: Vec<Resumable>,
    full_disk: bool,
    at: Option<usize>,
    people: People,
    settings: Settings,
    /// How the learner stands with the second lesson.
    standing: Standing,
}

impl Stand {
    fn said(&self, what: impl Into<String>) {
        self.log.borrow_mut().push(what.into());
    }

    fn opening(&self, resumed: bool) -> Opening {
        let mut tutor = Canned::new(&self.log);
        if resumed {
            tutor.view.lines = vec![
                answered(Some(1), "W = 3 N", Sign::Wrong, ""),
                answered(None, "hint", Sign::Talk, ""),
            ];
        }
        Opening {
            session: Box::new(tutor),
            resumed,
            whole: true,
            first: None,
            notes: vec![Prose::plain("A note.")],
        }
    }
}

impl Desk for Stand {
    fn entered(&mut self, line: &str) -> Vec<Prose> {
        self.said(format!("entered {line}"));
        Vec::new()
    }

    fn judged(&mut self, turn: &Turn) -> Vec<Prose> {
        self.said(format!("judged {}", turn.line.text));
        Vec::new()
    }

    fn lessons(&self) -> Vec<LessonChoice> {
        let lesson = |id: &str, title: &str| LessonChoice {
            id: id.into(),
            title: title.into(),
            teaches: "Something.".into(),
            ..LessonChoice::default()
        };
        let gate = LessonChoice {
            builds_on: vec![0],
            standing: self.standing,
            ..lesson("gate", "The gate")
        };
        vec![lesson("sign", "The sign"), gate]
    }

    fn open(&mut self, lesson: usize) -> Result<Opening, Prose> {
        self.said(format!("open {lesson}"));
        self.at = Some(lesson);
        Ok(self.opening(false))
    }

    fn open_own(&mut self, problem: &Problem) -> Result<Opening, Prose> {
        self.said(format!("open own {}", problem.title()));
        Ok(self.opening(false))
    }

    fn keep_problem(&mut self, _problem: &Problem, name: &str) -> Result<Prose, Prose> {
        self.said(format!("keep {name}"));
        match name {
            "taken" => Err(Prose::plain("Taken.")),
            _ => Ok(Prose::plain("Kept.")),
        }
    }

    fn open_lesson(&self) -> Option<usize> {
        self.at
    }

    fn unfinished(&mut self) -> Option<Resumable> {
        self.left.clone()
    }

    fn older_unfinished(&self) -> Vec<Resumable> {
        self.older.clone()
    }

    fn resume_older(&mut self, place: usize) -> Result<Opening, Prose> {
        self.said(format!("older {place}"));
        Ok(self.opening(true))
    }

    fn resume(&mut self) -> Result<Opening, Prose> {
        self.said("resume");
        Ok(self.opening(true))
    }

    fn has_kept_all(&self) -> bool {
        !self.full_disk
    }

    fn people(&self) -> People {
        self.people.clone()
    }

    fn call(&mut self, typed: &str, at_problem: bool) -> Result<Prose, Prose> {
        self.said(format!("call {typed} {at_problem}"));
        self.people.ask = false;
        if typed == "9" {
            return Err(Prose::plain("Nobody has this number."));
        }
        self.people.name = Some(typed.to_owned());
        Ok(Prose::plain(format!("Welcome, {typed}.")))
    }

    fn settings(&self) -> Settings {
        self.settings
    }

    fn settle(&mut self, settings: Settings) -> Vec<Prose> {
        self.settings = settings;
        Vec::new()
    }

    fn decline(&mut self) {
        self.said("decline");
        self.left = None;
    }

    fn closed(&mut self, finished: bool) {
        self.at = None;
        self.said(format!("closed {finished}"));
    }
}

/// Runs the dialogue over an input; what was said, and what was asked of desk and tutor.
fn talk(left: Option<usize>, at_problem: bool, input: &[u8]) -> (String, Vec<String>) {
    let desk = Stand {
        left: left.map(|lines| Resumable {
            title: "The gate".into(),
            lines,
        }),
        ..Stand::default()
    };
    talk_to(desk, at_problem, input)
}

fn talk_to(mut desk: Stand, at_problem: bool, input: &[u8]) -> (String, Vec<String>) {
    let start = if at_problem {
        Start::Problem(desk.opening(false))
    } else {
        Start::Menu
    };
    let mut output = Vec::new();
    let (mut input, out) = (input, &mut output);
    run(&mut desk, start, Vec::new(), true, &mut input, out).unwrap();
    let log = desk.log.borrow().clone();
    (String::from_utf8(output).unwrap(), log)
}

#[test]
fn a_working_reads_like_a_conversation() {
    let (text, log) = talk(None, true, b"1 +\n3 N\n2*9.8\nfinish\n2\nquit\n");
    let from = text.find("A sign\n").unwrap();
    let upto = text.find("Choose by number").unwrap();
    let shown: Vec<&str> = text[from..upto].lines().collect();
    let told = shown
        .iter()
        .position(|line| line.starts_with("In the diagram"))
        .unwrap();
    assert_eq!(
        shown[..told],
        [
            "A sign",
            "A sign hangs from a beam.",
            "g = 9.8 m/s²",
            "For learning only.",
            "A note."
        ]
    );
    let asked = shown.iter().position(|line| line.is_empty()).unwrap();
    assert_eq!(
        shown[asked..],
        [
            "",
            "How large is W?",
            "You may type: 2*9.8.",
            "> 1 +",
            "  1 +",
            "    ^",
            "Line 1: unclear. A number should stand here.",
            "> 3 N",
            "Line 2: wrong. It does not hold.",
            "Hint: Look at g.",
            "> 2*9.8",
            "Read as: 2 · 9.8 = 19.6 N",
            "Line 3: right. It holds.",
            "In the diagram: W acts at its middle, straight down.",
            "",
            "How large is T?",
            "You may type: 2*9.8.",
            "> finish",
            "Line 4: noted. Noted.",
            "All found.",
            "",
        ]
    );
    assert_eq!(
        log[..3],
        ["entered 1 +", "submit 1 +", "judged 1 +"],
        "written down before it is judged"
    );
    assert_eq!(
        log[log.len() - 6..],
        [
            "closed true",
            "open 1",
            "entered quit",
            "submit quit",
            "judged quit",
            "closed false"
        ]
    );
}

#[test]
fn an_empty_line_asks_for_the_question_again() {
    let (text, _) = talk(None, true, b"5\n\n5\n");
    assert_eq!(text.matches("How large is W?").count(), 2, "{text}");
}

#[test]
fn the_end_of_the_input_anywhere_leaves_safely() {
    for (at_problem, input) in [
        (true, &b""[..]),
        (true, b"3 N"),
        (false, b""),
        (false, b"1\n"),
    ] {
        let (text, log) = talk(None, at_problem, input);
        assert!(text.contains("Everything you entered is kept."), "{text}");
        assert!(!log.contains(&"closed true".to_owned()));
    }
    // A last line without its end is a line.
    assert!(
        talk(None, true, b"3 N")
            .1
            .contains(&"judged 3 N".to_owned())
    );
}

#[test]
fn choices_are_made_by_number_or_name_and_a_wrong_one_is_asked_again() {
    for (left, input, asked) in [
        (None, "2\n", "open 1"),
        (None, "gate\n", "open 1"),
        (None, "\n", "open 0"),
        (None, "0\n9\n-1\nsomething\n1\n", "open 0"),
        (Some(2), "0\n", "resume"),
        (Some(2), "\n", "resume"),
        (Some(2), "1\n", "open 0"),
        (Some(2), "Put away\n", "decline"),
    ] {
        let (text, log) = talk(left, false, input.as_bytes());
        assert_eq!(
            log.first().map(String::as_str),
            Some(asked),
            "{input:?}: {text}"
        );
        let unclear = text.matches("not one of the numbers").count();
        assert_eq!(unclear, input.lines().count() - 1, "{text}");
    }
    assert_eq!(
        talk(None, false, b"put away\nquit\n").1,
        Vec::<String>::new()
    );
}

#[test]
fn older_problems_that_were_left_stand_behind_the_lessons() {
    let left = |lines| Resumable {
        title: "The gate".into(),
        lines,
    };
    let desk = Stand {
        left: Some(left(2)),
        older: vec![left(1), left(4)],
        ..Stand::default()
    };
    let (text, log) = talk_to(desk, false, b"4\nquit\n");
    for said in [
        "0. Carry on where you stopped: The gate (2 lines).",
        "3. Unfinished: The gate (1 line).",
        "4. Unfinished: The gate (4 lines).",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert!(log.contains(&"older 1".to_owned()), "{log:?}");
}

#[test]
fn what_was_left_is_offered_and_gone_once_it_is_put_away() {
    let (text, _) = talk(Some(1), false, b"put away\nquit\n");
    assert_eq!(text.matches("The gate (1 line)").count(), 1, "{text}");
    assert!(text.contains("stay in your record"), "{text}");
    let (text, _) = talk(Some(2), false, b"0\nquit\n");
    assert!(text.contains("(2 lines)"), "{text}");
    assert!(text.contains("1. W = 3 N (wrong)"), "{text}");
    assert!(
        !text.contains("hint (talk)"),
        "orders are no working: {text}"
    );
}

#[test]
fn any_bytes_are_taken_and_none_reaches_the_terminal_raw() {
    let mut input = b"\xff\xfe\x1b[2J\x07\r\n".to_vec();
    input.extend(std::iter::repeat_n(b'7', 3 << 20));
    input.extend(b"\nquit\n");
    let (text, log) = talk(None, true, &input);
    let raw = |c: char| c.is_control() && c != '\n';
    assert!(!text.contains(raw), "{text:?}");
    let lines = log
        .iter()
        .filter(|line| line.starts_with("entered"))
        .count();
    assert_eq!(lines, 3, "an endless line is one line");
}

/// A line feed, a carriage return, or both end a line; none is lost and none counts twice.
#[test]
fn lines_end_in_any_of_the_three_ways() {
    for end in ["\n", "\r", "\r\n"] {
        let input = ["1", "", "2*9.8", "quit"].map(|line| format!("{line}{end}"));
        let (_, log) = talk(None, true, input.concat().as_bytes());
        let entered: Vec<&String> = log
            .iter()
            .filter(|line| line.starts_with("entered"))
            .collect();
        assert_eq!(entered.len(), 4, "{end:?}: {entered:?}");
        assert!(entered[2].contains("2*9.8"), "{end:?}: {entered:?}");
    }
}

#[test]
fn no_line_of_prose_is_wider_than_a_terminal() {
    let (text, _) = talk(Some(2), false, b"0\n2*9.8\nquit\n");
    let widest = text.lines().map(|line| line.chars().count()).max().unwrap();
    assert!(widest <= WIDTH, "{widest}");
}

#[test]
fn nothing_is_called_kept_that_is_not() {
    for (at_problem, input) in [(true, &b"3 N\n"[..]), (true, b"quit\n"), (false, b"quit\n")] {
        let desk = Stand {
            full_disk: true,
            ..Stand::default()
        };
        let (text, _) = talk_to(desk, at_problem, input);
        let last = text.lines().last();
        assert_eq!(last, Some("Not everything could be saved."), "{text}");
        assert!(!text.contains("Every line is saved"), "{text}");
    }
}

#[test]
fn going_on_next_time_is_promised_only_where_it_can_be_kept() {
    let (text, _) = talk(None, true, b"quit\n");
    assert!(
        text.contains("Noted."),
        "what the tutor says at the end: {text}"
    );
    let desk = Stand {
        full_disk: true,
        ..Stand::default()
    };
    let (text, _) = talk_to(desk, true, b"quit\n");
    assert!(!text.contains("Noted."), "{text}");
}

#[test]
fn a_call_for_help_tells_the_names_at_hand_with_their_values() {
    for (line, times) in [("?", 1), ("help", 1), ("what is known?", 1), ("1 N", 0)] {
        let input = format!("{line}\nquit\n");
        let (text, _) = talk(None, true, input.as_bytes());
        let told = "Names at hand: m1 = 12 kg, α (type alpha).";
        assert_eq!(text.matches(told).count(), times, "{line}: {text}");
    }
}

#[test]
fn enter_after_the_end_opens_the_lesson_that_was_finished() {
    let (text, log) = talk(None, false, b"2\nfinish\n7\n\nquit\n");
    let opened: Vec<&String> = log.iter().filter(|said| said.starts_with("open")).collect();
    assert_eq!(opened, ["open 1", "open 1"]);
    let after = text.split("All found.").nth(1).unwrap();
    let again = "press Enter for a fresh problem of the same lesson.";
    assert_eq!(after.matches(again).count(), 2, "after a slip too: {after}");
}

#[test]
fn enter_carries_on_where_something_was_left() {
    let (text, log) = talk(Some(2), false, b"2\nfinish\n\nquit\n");
    assert!(log.contains(&"resume".to_owned()), "{log:?}");
    assert!(!text.contains("press Enter for a fresh"), "{text}");
}

#[test]
fn a_problem_of_ones_own_is_asked_for_kept_and_opened() {
    let answers = "own\nplank\n2 m\nheavy\nback\n2.4 m\n18 kg\n1\n1\n1\nfoot\n1\ntip\n3\nback\n1\n1\n\n\
                   taken\nmy plank\nquit\n";
    let (said, asked) = talk(None, false, answers.as_bytes());
    insta::assert_snapshot!(said);
    let asked: Vec<&str> = asked.iter().map(String::as_str).collect();
    assert_eq!(
        asked,
        [
            "keep taken",
            "keep my plank",
            "open own Your own problem: the plank",
            "entered quit",
            "submit quit",
            "judged quit",
            "closed false"
        ]
    );
}
