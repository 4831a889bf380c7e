//! What stands on a terminal that is too small to work on.

use super::prose::wrap;
use super::regions::SMALLEST;
use crate::screen::model::{Model, Over};
use crate::text::Slot;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::widgets::Paragraph;

/// Says how large the terminal must be.
pub(super) fn draw(model: &Model, frame: &mut Frame, area: Rect) {
    let number = |number: u16| Slot::Value(number.to_string());
    let told = if model.over == Over::Leaving {
        super::strip::leaving_word(model).then(model.words.say("screen.leaving.small", &[]))
    } else {
        model.words.say(
            "screen.small",
            &[
                ("columns", number(SMALLEST.0)),
                ("rows", number(SMALLEST.1)),
                ("now-columns", number(area.width)),
                ("now-rows", number(area.height)),
            ],
        )
    };
    let rows = wrap(model.theme, &told, area.width.into(), Default::default());
    frame.render_widget(Paragraph::new(rows), area);
}
