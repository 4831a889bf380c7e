//! Whole screens as text.

use super::stand_ins::{Remembering, at_problem, blank, open};
use crate::practice::{Opening, Resumable, Start};
use crate::screen::keys::Command;
use crate::screen::message::Message;
use crate::screen::model::{Model, Over, Pane};
use crate::screen::theme::Depth;
use crate::screen::{begin, dispatch, view};
use crate::session::Session;
use crate::text::{Language, Prose, Words};
use ratatui::Terminal;
use ratatui::backend::TestBackend;
use ratatui::buffer::Buffer;
use ratatui::style::Color;

fn drawn(model: &Model) -> Buffer {
    let (columns, rows) = model.size;
    let mut terminal = Terminal::new(TestBackend::new(columns, rows)).unwrap();
    terminal.draw(|frame| view::draw(model, frame)).unwrap();
    terminal.backend().buffer().clone()
}

/// The screen, without blanks at the ends of rows.
pub(super) fn told(model: &Model) -> String {
    let buffer = drawn(model);
    let rows: Vec<String> = buffer
        .content
        .chunks(model.size.0.into())
        .map(|row| {
            let row: String = row.iter().map(|cell| cell.symbol()).collect();
            row.trim_end().to_owned()
        })
        .collect();
    let shown = rows.join("\n");
    // This is how a sentence that is missing in the catalogue shows itself.
    assert!(!shown.contains("[screen."), "{shown}");
    shown
}

fn menu(unfinished: bool, columns: u16, rows: u16) -> Model {
    let mut desk = Remembering {
        unfinished: unfinished.then(|| Resumable {
            title: "The shelf of the pantry".into(),
            lines: 4,
        }),
        older: (0..u32::from(unfinished))
            .map(|_| Resumable {
                title: "The gangway of the ferry".into(),
                lines: 9,
            })
            .collect(),
        ..Remembering::default()
    };
    let mut model = blank(columns, rows);
    begin(&mut desk, &mut model, Start::Menu);
    model
}

#[test]
fn the_list_of_lessons() {
    insta::assert_snapshot!("menu_80x24", told(&menu(false, 80, 24)));
    insta::assert_snapshot!("menu_unfinished_80x24", told(&menu(true, 80, 24)));
    insta::assert_snapshot!("menu_unfinished_60x16", told(&menu(true, 60, 16)));
}

/// A lesson that is to be taken as an example says so beneath its title.
#[test]
fn the_list_tells_how_a_lesson_is_taken() {
    let mut model = menu(false, 80, 24);
    crate::screen::update(&mut model, Message::Pressed(Command::Swap));
    insta::assert_snapshot!("menu_worked_80x24", told(&model));
}

#[test]
fn before_the_first_line() {
    insta::assert_snapshot!("start_80x24", told(&at_problem(false, 80, 24)));
    insta::assert_snapshot!("start_100x30", told(&at_problem(false, 100, 30)));
    insta::assert_snapshot!("start_60x16", told(&at_problem(false, 60, 16)));
}

#[test]
fn in_the_midst_of_the_working() {
    for (columns, rows) in [(60, 16), (80, 24), (100, 30), (140, 45)] {
        let mut model = at_problem(true, columns, rows);
        for c in "Wg⊥ = Wg*cos(35)".chars() {
            crate::screen::update(&mut model, Message::Typed(c));
        }
        insta::assert_snapshot!(format!("midst_{columns}x{rows}"), told(&model));
    }
}

#[test]
fn the_working_across_a_narrow_screen() {
    let mut model = at_problem(true, 80, 24);
    open(&mut model).pane = Pane::Working;
    insta::assert_snapshot!("working_80x24", told(&model));
    crate::screen::update(&mut model, Message::Pressed(Command::PageUp));
    insta::assert_snapshot!("working_scrolled_80x24", told(&model));
}

#[test]
fn the_end_of_a_problem() {
    let mut model = at_problem(true, 100, 30);
    let mut desk = Remembering::default();
    for c in "finish".chars() {
        dispatch(&mut desk, &mut model, Message::Typed(c));
    }
    dispatch(&mut desk, &mut model, Message::Pressed(Command::Enter));
    insta::assert_snapshot!("finished_100x30", told(&model));
}

#[test]
fn leaving_and_notes() {
    let mut model = at_problem(true, 80, 24);
    model.notes = vec![Prose::plain(
        "Your line could not be saved. The disk is full.",
    )];
    model.over = Over::Leaving;
    insta::assert_snapshot!("leaving_80x24", told(&model));
    model.kept = false;
    let shown = told(&model);
    assert!(
        shown.contains("Not everything you entered is saved."),
        "{shown}"
    );
    assert!(!shown.contains("is kept."), "{shown}");
}

/// Neither the list nor a problem's first screen calls leaving safe while nothing is saved.
#[test]
fn leaving_is_called_safe_only_where_all_is_kept() {
    let pages = [
        menu(true, 80, 24),
        menu(false, 60, 16),
        at_problem(false, 100, 30),
    ];
    for mut model in pages {
        let shown = told(&model)
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ");
        assert!(shown.contains("Esc"), "{shown}");
        assert!(shown.contains("saved as you"), "{shown}");
        for over in [Over::Nothing, Over::Leaving, Over::Help(0)] {
            model.kept = false;
            model.over = over;
            let shown = told(&model);
            for promise in ["saved as you", "is safe", "is kept"] {
                assert!(!shown.contains(promise), "{shown}");
            }
        }
    }
}

/// A terminal may call itself as large as it likes.
#[test]
fn a_huge_terminal_is_drawn_on_in_part() {
    use ratatui::layout::{Rect, Size};
    use ratatui::{TerminalOptions, Viewport};
    let area = crate::screen::terminal::drawn_on(Size::new(u16::MAX, u16::MAX));
    assert_eq!(area, Rect::new(0, 0, 500, 200));
    let small = crate::screen::terminal::drawn_on(Size::new(80, 24));
    assert_eq!(small, Rect::new(0, 0, 80, 24));
    let viewport = Viewport::Fixed(area);
    let options = TerminalOptions { viewport };
    let mut terminal = Terminal::with_options(TestBackend::new(600, 240), options).unwrap();
    let model = at_problem(true, area.width, area.height);
    terminal.draw(|frame| view::draw(&model, frame)).unwrap();
    let buffer = terminal.backend().buffer();
    let drawn = |column, row| buffer.cell((column, row)).unwrap().symbol() != " ";
    assert!((0..500).any(|column| drawn(column, 199)));
    assert!((500..600).all(|column| (0..240).all(|row| !drawn(column, row))));
}

#[test]
fn the_help_page() {
    let mut model = at_problem(true, 80, 70);
    model.over = Over::Help(0);
    insta::assert_snapshot!("help_80x70", told(&model));
    let mut list = menu(true, 80, 50);
    list.over = Over::Help(0);
    let shown = told(&list);
    for needed in [
        "1 Keys that work here",
        "F1                  this page",
        "due again",
    ] {
        assert!(shown.contains(needed), "{needed}: {shown}");
    }
    assert!(!shown.contains("Ctrl-W"), "{shown}");
}

/// The keys that work here come first, and a number leads to each section.
#[test]
fn a_number_leads_to_a_section_of_the_help_page() {
    let mut model = at_problem(true, 80, 24);
    crate::screen::update(&mut model, Message::Pressed(Command::Help));
    assert!(told(&model).contains("1 Keys that work here"));
    for (number, heading) in [
        ('3', "3 What the signs before a line mean"),
        ('2', "2 How to type"),
        ('4', "4 What the marks in the drawing mean"),
    ] {
        crate::screen::update(&mut model, Message::Typed(number));
        let shown = told(&model);
        let first = shown.lines().find(|row| !row.is_empty());
        assert_eq!(first.map(str::trim), Some(heading), "{shown}");
    }
    // What is no section closes the page, like any other character.
    crate::screen::update(&mut model, Message::Typed('9'));
    assert_eq!(model.over, Over::Nothing);
    assert_eq!(open(&mut model).input.value(), "");
}

#[test]
fn a_terminal_that_is_too_small_says_how_large_it_must_be() {
    insta::assert_snapshot!("small_40x10", told(&at_problem(true, 40, 10)));
}

#[test]
fn without_unicode_every_cell_is_ascii() {
    let mut model = at_problem(true, 100, 30);
    model.theme.unicode = false;
    insta::assert_snapshot!("ascii_100x30", told(&model));
    for mut model in [model, menu(true, 80, 24)] {
        model.theme.unicode = false;
        for over in [Over::Nothing, Over::Help(0), Over::Leaving] {
            model.over = over;
            let shown = told(&model);
            assert!(shown.is_ascii(), "{shown}");
        }
    }
}

#[test]
fn without_colour_no_cell_is_coloured() {
    let mut model = at_problem(true, 100, 30);
    let coloured = |model: &Model| {
        drawn(model)
            .content
            .iter()
            .any(|cell| cell.fg != Color::Reset)
    };
    assert!(coloured(&model));
    model.theme.depth = Depth::None;
    assert!(!coloured(&model));
}

/// From one cell up to where everything fits, on every page.
#[test]
fn every_size_can_be_drawn() {
    for rows in 1..=20 {
        for columns in 1..=70 {
            let mut pages = vec![
                menu(true, columns, rows),
                at_problem(false, columns, rows),
                at_problem(true, columns, rows),
            ];
            let mut scrolled = at_problem(true, columns, rows);
            open(&mut scrolled).top = Some(3);
            open(&mut scrolled).pane = Pane::Working;
            pages.push(scrolled);
            let mut help = at_problem(true, columns, rows);
            help.over = Over::Help(5);
            pages.push(help);
            for page in &pages {
                drawn(page);
            }
        }
    }
}

/// Question, input, verdict and hint are in sight at every size from the smallest on, whatever
/// pane is shown and however the working is scrolled.
#[test]
fn verdict_and_hint_are_always_in_sight() {
    for (columns, rows) in [(60, 16), (72, 20), (80, 24), (99, 40), (100, 30), (140, 45)] {
        for pane in [Pane::Diagram, Pane::Working] {
            for pages in 0..2 {
                let mut model = at_problem(true, columns, rows);
                open(&mut model).pane = pane;
                for _ in 0..pages {
                    crate::screen::update(&mut model, Message::Pressed(Command::PageUp));
                }
                let shown = told(&model);
                assert!(shown.lines().any(|row| row.trim() == "›"), "{shown}");
                for needed in ["How large is the part", "does not hold", "opposite?"] {
                    assert!(
                        shown.contains(needed),
                        "{needed} at {columns}x{rows}, {pane:?}, {pages} pages up:\n{shown}"
                    );
                }
            }
        }
    }
}

fn lessons_in_every_language() -> Vec<(crate::lesson::Lesson, Language)> {
    let lessons = crate::lesson::built_in();
    Language::all()
        .flat_map(|language| {
            lessons
                .clone()
                .into_iter()
                .map(move |lesson| (lesson, language))
        })
        .collect()
}

/// The problems of the built-in lessons, at the sizes that most terminals have.
#[test]
fn the_whole_statement_of_every_lesson_is_in_sight_beside_its_diagram() {
    for (lesson, language) in lessons_in_every_language() {
        for seed in 1..=3 {
            for (columns, rows) in [(80, 24), (100, 30), (120, 40)] {
                let drawn = crate::draw::draw(&lesson, seed, language.tag()).unwrap();
                let problem = drawn.problem;
                let words = problem.statement().split_whitespace();
                let end = words.clone().last().unwrap().to_owned();
                let session = Session::start(problem, None, Words::of(language)).unwrap();
                let mut model = blank(columns, rows);
                model.words = Words::of(language);
                model.show(Opening {
                    session: Box::new(session),
                    resumed: false,
                    whole: true,
                    first: None,
                    notes: Vec::new(),
                });
                let shown = told(&model);
                assert!(shown.contains(&end), "{end} at {columns}x{rows}:\n{shown}");
                assert!(
                    shown.contains('╱'),
                    "no diagram at {columns}x{rows}:\n{shown}"
                );
            }
        }
    }
}

/// Where the statement has too little room, it can be paged to its end.
#[test]
fn a_long_statement_can_be_paged() {
    let mut model = at_problem(false, 60, 16);
    let mut view = super::fixture::view(false);
    view.statement = format!("{} {} The end.", view.statement, view.statement);
    open(&mut model).view = view;
    let before = told(&model);
    assert!(!before.contains("The end."), "{before}");
    for _ in 0..5 {
        crate::screen::update(&mut model, Message::Pressed(Command::PageDown));
    }
    let after = told(&model);
    assert!(after.contains("The end."), "{after}");
    for _ in 0..5 {
        crate::screen::update(&mut model, Message::Pressed(Command::PageUp));
    }
    assert_eq!(told(&model), before);
}
