//! Lines that somebody could have typed, with a few marks changed, in any order.
#![no_main]

mod common;

use common::{Scene, enter, scenes};
use libfuzzer_sys::fuzz_target;

thread_local! {
    /// Built once; a session keeps what it judged last, and stays in its thread.
    static SCENES: Vec<Scene> = scenes();
}

/// What stands in lines of working, and what a slip of the hand puts there.
const MARKS: &[&str] = &[
    "=", "+", "-", "−", "*", "·", "×", "/", "÷", "(", ")", "[", "]", "^", "²", "√", "sqrt", "sin ",
    "cos ", "tan ", "atan(", "sin⁻¹", "°", "deg", "rad", "N", "kN", "N m", "kg", "m", "g", "9.81", "0",
    "1", "2", "0.5", "½", ",", ".", ";", " ", "  ", "≈", "<", "≤", ">", "->", "so ", "about A: ",
    "instead of line 2: ", "back", "T", "T1", "T2", "W", "Hx", "Hy", "F", "μ", "mu", "θ", "theta",
    "_", "⊥", "perp", "'", "let ", " is ", " no ", " left", " up", "e3", "x10^3", "π", "%", "|", "not ",
];

/// Choices, one byte after the other; when none are left, the first of everything.
struct Choices<'a>(std::slice::Iter<'a, u8>);

impl Choices<'_> {
    fn below(&mut self, count: usize) -> usize {
        let next = |bytes: &mut std::slice::Iter<'_, u8>| usize::from(*bytes.next().unwrap_or(&0));
        let wide = if count > 256 { next(&mut self.0) << 8 } else { 0 };
        (wide + next(&mut self.0)) % count
    }

    fn is_over(&self) -> bool {
        self.0.len() == 0
    }

    /// A line of this problem or, seldom, of another, with up to three changes.
    fn line(&mut self, scenes: &[Scene], at: usize) -> String {
        let from = match self.below(8) {
            0 => &scenes[self.below(scenes.len())],
            _ => &scenes[at],
        };
        let mut line: Vec<char> = from.lines[self.below(from.lines.len())].chars().collect();
        for _ in 0..self.below(4) {
            let at = self.below(line.len() + 1);
            let mark = MARKS[self.below(MARKS.len())].chars();
            match self.below(5) {
                0 => line.splice(at..at, mark).count(),
                1 if at < line.len() => line.splice(at..=at, mark).count(),
                2 if at < line.len() => line.drain(at..=at).count(),
                3 => line.drain(at..).count(),
                _ => {
                    let other = &from.lines[self.below(from.lines.len())];
                    let start = self.below(line.len() + 1);
                    line.splice(at..at, other.chars().skip(start)).count()
                }
            };
        }
        line.into_iter().collect()
    }
}

fuzz_target!(|data: &[u8]| {
    SCENES.with(|scenes| {
        let mut choices = Choices(data.iter());
        let at = choices.below(scenes.len());
        let scene = &scenes[at];
        let session = match choices.below(4) {
            0 => &scene.guided,
            _ => &scene.free,
        };
        let mut lines = Vec::new();
        while lines.len() < 8 && !choices.is_over() {
            lines.push(choices.line(scenes, at));
        }
        enter(session, lines.into_iter());
    });
});
