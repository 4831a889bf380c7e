//! The page on which a problem of one's own is built.

use super::looks::told;
use super::stand_ins::{Remembering, blank};
use crate::practice::Start;
use crate::screen::keys::Command;
use crate::screen::message::Message;
use crate::screen::model::{Model, Over, Page};
use crate::screen::{begin, dispatch};

/// Somebody at the page.
struct Builds {
    desk: Remembering,
    model: Model,
}

/// A tilted beam on a level rope, with a lamp at its tip.
const BEAM: &[&str] = &[
    "beam", "3.2 m", "20 kg", "2", "2", "35", "1", "1", "foot", "1", "tip", "2", "1", "lamp", "6",
    "tip", "1", "",
];

impl Builds {
    fn at(columns: u16, rows: u16) -> Builds {
        let mut desk = Remembering::default();
        let mut model = blank(columns, rows);
        begin(&mut desk, &mut model, Start::Menu);
        let mut builds = Builds { desk, model };
        builds.press(Command::LineEnd);
        builds.press(Command::Enter);
        builds
    }

    fn press(&mut self, command: Command) {
        dispatch(&mut self.desk, &mut self.model, Message::Pressed(command));
    }

    fn type_in(&mut self, text: &str) {
        for c in text.chars() {
            dispatch(&mut self.desk, &mut self.model, Message::Typed(c));
        }
    }

    fn answer(&mut self, answers: &[&str]) {
        for answer in answers {
            self.type_in(answer);
            self.press(Command::Enter);
        }
    }

    fn answered(&self) -> usize {
        match &self.model.page {
            Page::Building(page) => page.builder.answered(),
            _ => panic!("nothing is built here"),
        }
    }

    fn shown(&self) -> String {
        told(&self.model)
    }

    fn shows(&self, needed: &str) {
        let shown = self.shown();
        assert!(shown.contains(needed), "{needed}\n{shown}");
    }
}

#[test]
fn the_page_grows_with_the_answers() {
    let mut builds = Builds::at(80, 24);
    insta::assert_snapshot!("build_start_80x24", builds.shown());
    builds.answer(&BEAM[..11]);
    insta::assert_snapshot!("build_midst_80x24", builds.shown());
    for (columns, rows) in [(60, 16), (120, 40)] {
        builds.model.size = (columns, rows);
        insta::assert_snapshot!(format!("build_midst_{columns}x{rows}"), builds.shown());
    }
    builds.model.size = (80, 24);
    builds.answer(&BEAM[11..]);
    insta::assert_snapshot!("build_whole_80x24", builds.shown());
    builds.model.size = (120, 40);
    insta::assert_snapshot!("build_whole_120x40", builds.shown());
}

#[test]
fn what_cannot_stand_is_told_at_once_until_it_is_mended() {
    let mut builds = Builds::at(80, 24);
    builds.model.theme.unicode = false;
    // To the right the level rope would have to push.
    builds.answer(&BEAM[..11]);
    builds.answer(&["3"]);
    insta::assert_snapshot!("build_push_ascii_80x24", builds.shown());
    builds.model.theme.unicode = true;
    builds.answer(&["2", "1.2"]);
    builds.shows("would have to push");
    builds.answer(&["1"]);
    builds.shows("statically indeterminate");
    builds.answer(&["1", ""]);
    builds.shows("cannot be worked as it stands");
    builds.press(Command::Enter);
    assert!(builds.desk.asked.is_empty(), "{:?}", builds.desk.asked);
    // The level rope of before is marked when its question comes back.
    for _ in 0..6 {
        builds.press(Command::StageBack);
    }
    builds.shows("▸ 3  level, to the right");
    builds.answer(&["2"]);
    assert!(!builds.shown().contains('◆'), "{}", builds.shown());
}

#[test]
fn a_bad_answer_is_told_and_stays_to_be_edited() {
    let mut builds = Builds::at(80, 24);
    builds.answer(&["a beam", "long"]);
    builds.shows("not read as a number");
    assert_eq!(builds.answered(), 1);
    builds.press(Command::CutBefore);
    builds.answer(&["3.2 m"]);
    assert!(!builds.shown().contains("not read"), "{}", builds.shown());
    builds.press(Command::Enter);
    builds.shows("Nothing is typed yet");
    builds.type_in("20 kgs");
    builds.press(Command::Backspace);
    builds.press(Command::Enter);
    builds.shows("mass      20 kg");
}

#[test]
fn an_answer_taken_back_stands_ready_and_those_after_it_too() {
    let mut builds = Builds::at(80, 24);
    builds.answer(&BEAM[..9]);
    for _ in 0..8 {
        builds.press(Command::StageBack);
    }
    assert_eq!(builds.answered(), 1);
    builds.shows("› 3.2 m");
    builds.shows("what you type replaces it");
    builds.type_in("4 m");
    builds.shows("› 4 m");
    builds.press(Command::Enter);
    for _ in 0..7 {
        builds.press(Command::Enter);
    }
    assert_eq!(builds.answered(), 9);
    builds.shows("length    4 m");
    builds.shows("at        foot");
    // `back` may be typed, too; a key that edits keeps what stands ready.
    builds.press(Command::StageBack);
    builds.press(Command::Backspace);
    builds.shows("› foo");
    builds.press(Command::CutBefore);
    builds.answer(&["back"]);
    assert_eq!(builds.answered(), 7);
}

#[test]
fn answers_wait_in_the_list_and_leaving_says_that_they_go() {
    let mut builds = Builds::at(80, 24);
    builds.press(Command::Leave);
    builds.shows("Leave now?");
    builds.type_in(" ");
    builds.answer(&BEAM[..3]);
    builds.press(Command::Leave);
    builds.shows("Leaving drops your own problem.");
    builds.press(Command::Lessons);
    builds.shows("3 answers so far");
    builds.press(Command::Leave);
    builds.shows("Leaving drops your own problem.");
    builds.type_in(" ");
    // A lesson in between loses nothing.
    builds.answer(&["1"]);
    builds.answer(&["T = 3 N"]);
    builds.press(Command::Lessons);
    builds.press(Command::LineEnd);
    builds.press(Command::Enter);
    assert_eq!(builds.answered(), 3);
    builds.shows("How does the beam stand?");
}

#[test]
fn it_is_kept_as_a_file_and_worked_at() {
    let mut builds = Builds::at(80, 24);
    builds.answer(BEAM);
    builds.answer(&["2"]);
    builds.shows("Under which name");
    builds.shows("› beam");
    builds.press(Command::Leave);
    builds.shows("it can be worked");
    builds.answer(&["2", "taken"]);
    builds.shows("of that name already");
    builds.press(Command::CutBefore);
    builds.answer(&["my beam"]);
    builds.shows("It is kept.");
    builds.press(Command::Leave);
    builds.shows("Leave now?");
    builds.type_in(" ");
    builds.press(Command::Enter);
    assert_eq!(
        builds.desk.asked,
        [
            "keep taken",
            "keep my beam",
            "open own Your own problem: the beam"
        ]
    );
    assert!(matches!(builds.model.page, Page::Working(_)));
}

/// A problem that is not kept as a file is in the record from its first line on, and till then the
/// answers wait.
#[test]
fn before_its_first_line_a_problem_that_was_opened_can_be_changed() {
    let mut builds = Builds::at(80, 24);
    builds.answer(BEAM);
    builds.press(Command::Enter);
    builds.press(Command::Leave);
    builds.shows("Leaving drops your own problem.");
    builds.type_in(" ");
    builds.press(Command::Lessons);
    builds.press(Command::LineEnd);
    builds.press(Command::Enter);
    assert_eq!(builds.answered(), BEAM.len());
    builds.press(Command::Enter);
    builds.answer(&["T = 3 N"]);
    builds.press(Command::Leave);
    builds.shows("Everything you entered is kept.");
    builds.press(Command::Lessons);
    builds.press(Command::LineEnd);
    builds.press(Command::Enter);
    assert_eq!(builds.answered(), 0);
}

/// Question, line or choices, and the keys stand in sight at any size and any question.
#[test]
fn the_question_is_always_in_sight() {
    for (columns, rows) in [(60, 16), (72, 20), (80, 24), (100, 30), (140, 45)] {
        for unicode in [true, false] {
            let mut builds = Builds::at(columns, rows);
            builds.model.theme.unicode = unicode;
            for answer in BEAM {
                let shown = builds.shown();
                let asked = match &builds.model.page {
                    Page::Building(page) => page.builder.asked().unwrap(),
                    _ => panic!("nothing is built here"),
                };
                let prompt = asked.prompt.to_string();
                let begin: String = prompt.chars().take(20).collect();
                assert!(shown.contains(&begin), "{prompt}\n{shown}");
                for choice in &asked.choices {
                    let choice: String = choice.to_string().chars().take(20).collect();
                    assert!(shown.contains(&choice), "{choice}\n{shown}");
                }
                assert!(shown.contains("F1 help"), "{shown}");
                builds.answer(&[answer]);
            }
            builds.shows("keep it as a problem file first");
        }
    }
}

#[test]
fn its_help_tells_its_keys_and_how_to_answer() {
    let mut builds = Builds::at(80, 44);
    builds.press(Command::Help);
    assert!(matches!(builds.model.over, Over::Help(0)));
    insta::assert_snapshot!("build_help_80x44", builds.shown());
    builds.press(Command::Enter);
    builds.answer(&["?"]);
    assert!(matches!(builds.model.over, Over::Help(0)));
    builds.press(Command::Enter);
    dispatch(
        &mut builds.desk,
        &mut builds.model,
        Message::Pasted("plank\nmore".into()),
    );
    builds.shows("› plank");
}
