//! What builds on what, drawn before the titles of the lessons, and how the learner stands.

use crate::practice::{LessonChoice, Standing, depths};
use crate::screen::model::Model;
use crate::screen::theme::Theme;
use crate::text::Slot;
use ratatui::style::Style;
use ratatui::text::Span;

/// What stands before the rows of a lesson.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Branch {
    /// Before its title.
    pub(super) first: String,
    /// Before the rows beneath, and before an empty row after it.
    pub(super) rest: String,
}

/// A line from a lesson down to one that builds on it, and the column in which it is drawn.
struct Link {
    from: usize,
    to: usize,
    column: usize,
}

/// The lines from each lesson to what builds on it. A lesson hangs on the deepest of those that it
/// builds on; where another would stand in the way, the words must do.
pub(super) fn branches(model: &Model, lessons: &[LessonChoice]) -> Vec<Branch> {
    let depths = depths(lessons);
    let links: Vec<Link> = (0..lessons.len())
        .filter_map(|to| {
            let bases = lessons[to].builds_on.iter().copied();
            let from = bases
                .filter(|from| *from < to)
                .max_by_key(|from| (depths[*from], *from))?;
            let column = depths[from];
            let free = (from + 1..to).all(|between| depths[between] > column);
            (free && depths[to] == column + 1).then_some(Link { from, to, column })
        })
        .collect();
    let sign = |fine, ascii| model.theme.either(fine, ascii);
    let (down, end, fork) = (sign("│ ", "| "), sign("└ ", "` "), sign("├ ", "+ "));
    let branch = |place: usize| {
        let passes = |column: usize, from: usize| {
            let mut here = links.iter().filter(|link| link.column == column);
            here.any(|link| link.from <= from && place < link.to)
        };
        let hangs = |column: usize| {
            let mut here = links.iter().filter(|link| link.column == column);
            here.any(|link| link.to == place)
        };
        let mut branch = Branch::default();
        for column in 0..depths[place] {
            let on = passes(column, place.saturating_sub(1));
            branch.first += match (hangs(column), on) {
                (true, true) => fork,
                (true, false) => end,
                (false, true) => down,
                (false, false) => "  ",
            };
            branch.rest += if on { down } else { "  " };
        }
        branch.rest += if passes(depths[place], place) {
            down
        } else {
            "  "
        };
        branch
    };
    (0..lessons.len()).map(branch).collect()
}

/// How the learner stands with a lesson, in a sign and a word.
pub(super) fn standing(
    model: &Model,
    lessons: &[LessonChoice],
    place: usize,
) -> Vec<Span<'static>> {
    let standing = lessons[place].standing;
    let (sign, style) = sign(model.theme, standing);
    let untouched = lessons
        .iter()
        .all(|lesson| lesson.standing == Standing::New);
    let mut word = model.words.word(word(standing));
    let start = crate::practice::next_lesson(lessons) == Some(place);
    if untouched && start {
        word = model.words.word("standing.start");
    }
    vec![
        Span::styled(format!("{sign} "), style),
        Span::styled(word, style),
    ]
}

/// The sign of how a learner stands, one column wide.
pub(super) fn sign(theme: Theme, standing: Standing) -> (&'static str, Style) {
    let (fine, ascii, style) = match standing {
        Standing::New => ("·", ".", theme.faint()),
        Standing::Begun => ("◐", "%", Style::new()),
        Standing::Mastered => ("✓", "+", theme.strong()),
        Standing::Due => ("↻", "@", theme.key()),
    };
    (theme.either(fine, ascii), style)
}

fn word(standing: Standing) -> &'static str {
    match standing {
        Standing::New => "standing.new",
        Standing::Begun => "standing.begun",
        Standing::Mastered => "standing.mastered",
        Standing::Due => "standing.due",
    }
}

/// What a lesson teaches, and what it builds on.
pub(super) fn about(model: &Model, lesson: &LessonChoice) -> String {
    let bases: Vec<String> = lesson
        .builds_on
        .iter()
        .map(|base| (base + 1).to_string())
        .collect();
    let slots = [
        ("teaches", Slot::Word(lesson.teaches.clone())),
        ("numbers", Slot::Word(bases.join(", "))),
    ];
    match bases.is_empty() {
        true => lesson.teaches.clone(),
        false => model.words.say("standing.builds-on", &slots).to_string(),
    }
}
