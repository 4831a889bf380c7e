//! What messages change, and what they ask of the desk.

use super::stand_ins::{Remembering, at_problem, blank, open, read_as};
use crate::practice::{Desk, Resumable, Start};
use crate::screen::keys::Command;
use crate::screen::message::Message;
use crate::screen::model::{Model, Over, Page, Pane};
use crate::screen::{Next, begin, dispatch, together, view};

/// A screen and its desk.
struct Seat {
    desk: Remembering,
    model: Model,
}

impl Seat {
    fn at_problem(begun: bool) -> Seat {
        Seat {
            desk: Remembering::default(),
            model: at_problem(begun, 80, 24),
        }
    }

    fn at_menu(unfinished: bool) -> Seat {
        let mut seat = Seat {
            desk: Remembering {
                unfinished: unfinished.then(|| Resumable {
                    title: "The shelf of the pantry".into(),
                    lines: 1,
                }),
                ..Remembering::default()
            },
            model: blank(80, 24),
        };
        begin(&mut seat.desk, &mut seat.model, Start::Menu);
        seat
    }

    fn send(&mut self, message: Message) -> bool {
        let next = dispatch(&mut self.desk, &mut self.model, message);
        !matches!(next, Next::Leave)
    }

    fn press(&mut self, command: Command) -> bool {
        self.send(Message::Pressed(command))
    }

    fn type_in(&mut self, text: &str) {
        for c in text.chars() {
            self.send(Message::Typed(c));
        }
    }

    fn enter(&mut self, text: &str) {
        self.type_in(text);
        self.press(Command::Enter);
    }

    fn input(&mut self) -> String {
        open(&mut self.model).input.value().to_owned()
    }

    fn notes(&self) -> String {
        let notes: Vec<String> = self.model.notes.iter().map(ToString::to_string).collect();
        notes.join("\n")
    }
}

/// A paste that the terminal does not mark comes as many keys at once.
#[test]
fn characters_that_wait_together_are_what_they_are_one_by_one() {
    let keys = |text: &str| text.chars().map(Message::Typed).collect::<Vec<Message>>();
    for before in [None, Some(Command::Help), Some(Command::Leave)] {
        for text in ["4", "h42*9.8 N"] {
            let mut seats = [Seat::at_problem(false), Seat::at_problem(false)];
            for seat in &mut seats {
                seat.enter("skip");
                before.map(|command| seat.press(command));
            }
            let [one_by_one, at_once] = &mut seats;
            one_by_one.type_in(text);
            let mut messages = together(keys(text));
            assert_eq!(messages.len(), 1);
            messages.push(Message::Pressed(Command::Left));
            messages.extend(keys("x"));
            let messages = together(messages);
            assert_eq!(messages.len(), 3);
            one_by_one.press(Command::Left);
            one_by_one.type_in("x");
            for message in messages {
                at_once.send(message);
            }
            assert_eq!(one_by_one.input(), at_once.input(), "{text}");
            assert!(at_once.model.over == Over::Nothing);
            let preview = |seat: &mut Seat| open(&mut seat.model).preview.clone();
            assert_eq!(preview(one_by_one), preview(at_once));
        }
    }
}

#[test]
fn a_line_is_written_down_before_it_is_judged() {
    let mut seat = Seat::at_problem(false);
    seat.enter("  T = 3 N ");
    assert_eq!(seat.desk.asked, ["entered T = 3 N", "judged T = 3 N"]);
    assert_eq!(seat.input(), "");
    assert_eq!(open(&mut seat.model).view.lines.len(), 1);
}

#[test]
fn typing_edits_the_line_and_reads_it_anew() {
    let mut seat = Seat::at_problem(false);
    seat.type_in("3*x");
    assert_eq!(read_as(&mut seat.model), Some("3 · x".to_owned()));
    seat.press(Command::LineStart);
    seat.type_in("θ=");
    assert_eq!(seat.input(), "θ=3*x");
    seat.press(Command::Right);
    seat.press(Command::CutBefore);
    assert_eq!(seat.input(), "*x");
    seat.press(Command::Delete);
    seat.press(Command::CutAfter);
    assert_eq!(seat.input(), "");
    assert_eq!(open(&mut seat.model).preview, None);
    seat.type_in("two words");
    seat.press(Command::CutWord);
    assert_eq!(seat.input(), "two ");
    seat.press(Command::Backspace);
    seat.press(Command::Left);
    seat.press(Command::LineEnd);
    seat.type_in("!");
    assert_eq!(seat.input(), "two!");
}

#[test]
fn what_was_cut_is_put_back_and_a_change_is_undone() {
    let mut seat = Seat::at_problem(false);
    seat.press(Command::Undo);
    seat.press(Command::PutBack);
    assert_eq!(seat.input(), "");
    seat.type_in("3*x + 4");
    seat.press(Command::CutBefore);
    assert_eq!(seat.input(), "");
    // Nothing to cut: what was cut before is kept.
    seat.press(Command::CutAfter);
    seat.press(Command::PutBack);
    assert_eq!(seat.input(), "3*x + 4");
    for before in ["", "3*x + 4", "3*x +", "3*x", "", ""] {
        seat.press(Command::Undo);
        assert_eq!(seat.input(), before);
    }
    // The caret comes back, too, and the line is read anew.
    seat.type_in("3*x");
    seat.press(Command::LineStart);
    seat.press(Command::Delete);
    seat.press(Command::Undo);
    seat.type_in("2");
    assert_eq!(seat.input(), "23*x");
    assert_eq!(read_as(&mut seat.model), Some("23 · x".to_owned()));
    // A line that was entered stays so; one called back is undone to what was being typed.
    seat.press(Command::Enter);
    seat.press(Command::Undo);
    assert_eq!(seat.input(), "");
    seat.type_in("draft");
    seat.press(Command::Up);
    assert_eq!(seat.input(), "23*x");
    seat.press(Command::Undo);
    assert_eq!(seat.input(), "draft");
    // The line grows no longer than it may.
    seat.send(Message::Pasted("7".repeat(800)));
    seat.press(Command::CutBefore);
    seat.press(Command::PutBack);
    seat.press(Command::PutBack);
    assert_eq!(seat.input().chars().count(), 805);
}

/// Neither touches the model, on whatever page and whatever lies over it.
#[test]
fn redrawing_and_stopping_change_nothing() {
    for over in [Over::Nothing, Over::Help(2), Over::Leaving] {
        let mut seat = Seat::at_problem(true);
        seat.type_in("3*x");
        seat.model.over = over;
        for command in [Command::Redraw, Command::Suspend] {
            let next = dispatch(&mut seat.desk, &mut seat.model, Message::Pressed(command));
            match command {
                Command::Redraw => assert!(matches!(next, Next::Redraw)),
                _ => assert!(matches!(next, Next::Pause)),
            }
        }
        assert!(seat.model.over == over);
        assert_eq!(seat.input(), "3*x");
    }
}

#[test]
fn own_lines_come_back_and_the_draft_is_not_lost() {
    let mut seat = Seat::at_problem(false);
    seat.enter("first");
    seat.enter("second");
    seat.enter("second");
    seat.type_in("draft");
    seat.press(Command::Up);
    assert_eq!(seat.input(), "second");
    seat.press(Command::Up);
    seat.press(Command::Up);
    assert_eq!(seat.input(), "first");
    seat.press(Command::Down);
    seat.press(Command::Down);
    assert_eq!(seat.input(), "draft");
    seat.press(Command::Down);
    assert_eq!(seat.input(), "draft");
}

#[test]
fn a_resumed_problem_brings_its_lines_for_recall() {
    let mut seat = Seat::at_menu(true);
    seat.press(Command::Enter);
    assert_eq!(seat.desk.asked, ["resume"]);
    assert!(seat.notes().contains("where you stopped"));
    seat.press(Command::Up);
    assert_eq!(seat.input(), "Wg⊥ = Wg*sin(35)");
}

#[test]
fn only_the_first_line_of_a_paste_is_put_in() {
    let mut seat = Seat::at_problem(false);
    seat.type_in("T = ");
    seat.send(Message::Pasted("\r\n3 N\r\n4 N\r\n\r\n5 N\r\n".into()));
    assert_eq!(seat.input(), "T = 3 N");
    assert!(seat.notes().contains("other 2 lines"), "{}", seat.notes());
    assert!(seat.desk.asked.is_empty());
}

#[test]
fn a_paste_cannot_steer_the_terminal_and_has_an_end() {
    let mut seat = Seat::at_problem(false);
    seat.send(Message::Pasted("3\t\u{1b}[31mN\u{202e}".into()));
    assert_eq!(seat.input(), "3 [31mN");
    seat.send(Message::Pasted("9".repeat(5000)));
    assert_eq!(seat.input().len(), 1000);
    assert!(seat.notes().contains("1000"), "{}", seat.notes());
}

#[test]
fn tab_swaps_and_stages_step() {
    let mut seat = Seat::at_problem(true);
    assert_eq!(open(&mut seat.model).pane, Pane::Diagram);
    seat.press(Command::Swap);
    assert_eq!(open(&mut seat.model).pane, Pane::Working);
    seat.press(Command::StageBack);
    assert_eq!(open(&mut seat.model).pane, Pane::Diagram);
    assert_eq!(open(&mut seat.model).stage_shown(), (2, 3));
    for _ in 0..5 {
        seat.press(Command::StageBack);
    }
    assert_eq!(open(&mut seat.model).stage_shown(), (1, 3));
    for _ in 0..5 {
        seat.press(Command::StageForth);
    }
    assert_eq!(open(&mut seat.model).stage_shown(), (3, 3));
    assert_eq!(open(&mut seat.model).stage, None);
}

#[test]
fn paging_ends_at_both_ends_and_a_new_line_is_followed() {
    let mut seat = Seat::at_problem(true);
    seat.press(Command::Swap);
    for _ in 0..20 {
        seat.press(Command::PageUp);
    }
    assert_eq!(open(&mut seat.model).top, Some(0));
    for _ in 0..20 {
        seat.press(Command::PageDown);
    }
    assert_eq!(open(&mut seat.model).top, None);
    seat.press(Command::PageUp);
    seat.enter("T = 3 N");
    assert_eq!(open(&mut seat.model).top, None);
}

#[test]
fn the_statement_folds_with_the_first_line_and_unfolds_on_request() {
    let mut seat = Seat::at_problem(false);
    assert!(open(&mut seat.model).statement_in_full());
    seat.enter("T = 3 N");
    assert!(!open(&mut seat.model).statement_in_full());
    seat.press(Command::Statement);
    assert!(open(&mut seat.model).statement_in_full());
}

#[test]
fn leaving_takes_a_second_key_and_any_other_stays() {
    let mut seat = Seat::at_problem(true);
    assert!(seat.press(Command::Leave));
    assert_eq!(seat.model.over, Over::Leaving);
    seat.type_in(" ");
    assert_eq!(seat.model.over, Over::Nothing);
    assert_eq!(seat.input(), "");
    seat.press(Command::Leave);
    assert!(!seat.press(Command::Leave));
}

#[test]
fn quit_is_a_line_like_others_and_then_the_word_is_shown() {
    let mut seat = Seat::at_problem(true);
    seat.enter("quit");
    assert_eq!(seat.desk.asked, ["entered quit", "judged quit"]);
    assert_eq!(seat.model.over, Over::Leaving);
    assert!(!seat.press(Command::Enter));
}

#[test]
fn tab_goes_from_leaving_to_the_lessons() {
    let mut seat = Seat::at_problem(true);
    seat.press(Command::Leave);
    assert!(seat.press(Command::Swap));
    assert_eq!(seat.desk.asked, ["closed false"]);
    assert!(matches!(seat.model.page, Page::Menu(_)));
}

#[test]
fn a_half_typed_line_is_there_again_after_help_the_list_and_the_word_before_leaving() {
    let mut seat = Seat::at_menu(true);
    seat.press(Command::Enter);
    seat.type_in("3*x");
    for (away, back) in [
        (Command::Help, Command::Backspace),
        (Command::Leave, Command::Down),
    ] {
        seat.press(away);
        seat.press(back);
        assert_eq!(seat.model.over, Over::Nothing);
        assert_eq!(seat.input(), "3*x", "{away:?}");
    }
    seat.press(Command::Lessons);
    seat.press(Command::Enter);
    assert_eq!(seat.input(), "3*x");
    assert_eq!(
        read_as(&mut seat.model),
        Some("3 · x".to_owned()),
        "it is read again"
    );
    // What was entered or deleted does not come back.
    seat.press(Command::Enter);
    seat.press(Command::Lessons);
    seat.press(Command::Enter);
    assert_eq!(seat.input(), "");
}

#[test]
fn after_the_end_an_empty_line_brings_a_fresh_problem_of_the_lesson() {
    let mut seat = Seat::at_menu(false);
    seat.press(Command::Enter);
    seat.enter("finish");
    seat.press(Command::Enter);
    let asked = &seat.desk.asked;
    assert_eq!(asked[asked.len() - 2..], ["closed true", "open 0"]);
    assert_eq!(seat.model.open_problem(), Some(false));
    seat.enter("finish");
    seat.press(Command::Lessons);
    assert!(matches!(seat.model.page, Page::Menu(_)));
}

#[test]
fn after_the_end_of_a_problem_without_lesson_an_empty_line_leads_to_the_lessons() {
    let mut seat = Seat::at_problem(true);
    seat.press(Command::Enter);
    assert!(seat.notes().contains("Nothing is typed"));
    assert!(seat.desk.asked.is_empty());
    seat.enter("finish");
    assert_eq!(seat.notes(), "");
    seat.press(Command::Enter);
    assert_eq!(seat.desk.asked.last().unwrap(), "closed true");
    assert!(matches!(seat.model.page, Page::Menu(_)));
}

#[test]
fn what_could_not_be_saved_is_said_once_and_not_called_kept() {
    let mut seat = Seat::at_problem(true);
    seat.desk.full_disk = true;
    seat.enter("T = 3 N");
    assert_eq!(seat.model.notes.len(), 1);
    assert!(!seat.model.kept);
    seat.desk.full_disk = false;
    seat.enter("T = 4 N");
    assert!(seat.model.notes.is_empty() && seat.model.kept);
}

#[test]
fn lessons_are_chosen_by_arrows_and_by_number() {
    let mut seat = Seat::at_menu(true);
    seat.press(Command::Down);
    seat.press(Command::Enter);
    assert_eq!(seat.desk.asked, ["open 0"]);
    for (digit, asked) in [("2", "open 1"), ("0", "resume")] {
        let mut seat = Seat::at_menu(true);
        seat.type_in(digit);
        seat.press(Command::Enter);
        assert_eq!(seat.desk.asked, [asked]);
    }
}

#[test]
fn a_lesson_that_cannot_be_opened_says_why() {
    let mut seat = Seat::at_menu(false);
    seat.type_in("3");
    seat.press(Command::Enter);
    assert_eq!(seat.notes(), "This lesson cannot be opened.");
    assert!(matches!(seat.model.page, Page::Menu(_)));
}

#[test]
fn the_unfinished_problem_can_be_put_away() {
    let mut seat = Seat::at_menu(true);
    seat.press(Command::Delete);
    assert_eq!(seat.desk.asked, ["decline"]);
    seat.press(Command::Delete);
    assert_eq!(seat.desk.asked, ["decline"]);
}

#[test]
fn older_unfinished_problems_stand_behind_the_lessons() {
    let older = |title: &str| Resumable {
        title: title.into(),
        lines: 2,
    };
    let mut seat = Seat {
        desk: Remembering {
            unfinished: Some(older("The shelf of the pantry")),
            older: vec![older("The gate"), older("The crane")],
            ..Remembering::default()
        },
        model: blank(80, 24),
    };
    begin(&mut seat.desk, &mut seat.model, Start::Menu);
    let lessons = seat.desk.lessons().len();
    // Behind them stands the row of a problem of one's own.
    seat.press(Command::LineEnd);
    seat.press(Command::Up);
    seat.press(Command::Up);
    seat.press(Command::Enter);
    assert_eq!(seat.desk.asked, ["resume older 0", "resume"]);
    seat.press(Command::Lessons);
    seat.type_in(&(lessons + 2).to_string());
    seat.press(Command::Enter);
    assert_eq!(seat.desk.asked[3], "resume older 1");
}

#[test]
fn help_opens_scrolls_to_its_end_and_closes() {
    let mut seat = Seat::at_problem(true);
    seat.enter("?");
    assert_eq!(seat.model.over, Over::Help(0));
    assert!(seat.desk.asked.is_empty());
    for _ in 0..200 {
        seat.press(Command::PageDown);
    }
    assert_eq!(seat.model.over, Over::Help(view::help_limit(&seat.model)));
    seat.press(Command::Leave);
    assert_eq!(seat.model.over, Over::Nothing);
}

#[test]
fn what_cannot_be_seen_is_not_changed() {
    let mut seat = Seat::at_problem(true);
    seat.type_in("T");
    seat.send(Message::Resized(30, 8));
    seat.type_in(" = 3");
    seat.press(Command::Enter);
    seat.send(Message::Resized(80, 24));
    assert_eq!(seat.input(), "T");
    assert!(seat.desk.asked.is_empty());
}

#[test]
fn a_lesson_named_at_the_start_is_opened() {
    let mut seat = Seat {
        desk: Remembering::default(),
        model: blank(80, 24),
    };
    begin(&mut seat.desk, &mut seat.model, Start::Lesson(1));
    assert_eq!(seat.desk.asked, ["open 1"]);
    assert_eq!(seat.model.open_problem(), Some(false));
}

/// At the list one key tells how a lesson is taken; what is offered comes first, and another lesson
/// is taken as it is offered anew.
#[test]
fn a_lesson_may_be_taken_as_an_example_that_fades() {
    let mut seat = Seat::at_menu(false);
    seat.press(Command::Swap);
    seat.press(Command::Enter);
    assert_eq!(
        seat.desk.asked,
        ["open 0", "entered worked", "judged worked"]
    );
    let mut seat = Seat::at_menu(false);
    seat.desk.standings[0] = crate::practice::Standing::Begun;
    begin(&mut seat.desk, &mut seat.model, Start::Menu);
    seat.press(Command::Swap);
    seat.press(Command::Enter);
    assert_eq!(seat.desk.asked[1], "entered last");
    let mut seat = Seat::at_menu(false);
    for moves in [[Command::Down, Command::Up], [Command::Swap, Command::Swap]] {
        seat.press(Command::Swap);
        let _ = moves.map(|command| seat.press(command));
    }
    seat.press(Command::Enter);
    assert_eq!(seat.desk.asked, ["open 0"]);
    // No other row is taken so.
    let mut seat = Seat::at_menu(true);
    seat.press(Command::Swap);
    seat.press(Command::Enter);
    assert_eq!(seat.desk.asked, ["resume"]);
}

/// Behind an example Enter leads to a problem of which more is left to the learner.
#[test]
fn behind_an_example_less_is_shown() {
    use crate::session::Fading;
    for (fading, first) in [
        (Fading::Worked, Some("entered last")),
        (Fading::Last(Some(2)), None),
        (Fading::All, None),
    ] {
        let mut seat = Seat::at_menu(false);
        seat.press(Command::Enter);
        seat.enter("finish");
        open(&mut seat.model).view.fading = fading;
        seat.press(Command::Enter);
        let opened = seat
            .desk
            .asked
            .iter()
            .rposition(|asked| asked == "open 0")
            .unwrap();
        let next = seat.desk.asked.get(opened + 1).map(String::as_str);
        assert_eq!(next, first, "{fading:?}");
    }
}
