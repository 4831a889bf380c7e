//! How a line is read, in rows with its fractions stacked.

use super::{expression, vocabulary};
use leverwright::reading::{Reading, read};
use leverwright::sketch::spelled;
use leverwright::text::{Block, Formula};
use proptest::prelude::*;
use unicode_width::UnicodeWidthStr;

/// Lines, and the rows that a page would show.
const ROWS: &[(&str, &[&str])] = &[
    ("T = 39.2", &["T = 39.2"]),
    (
        "W1*d1/dT", //
        &[
            "W1·d1", //
            "─────", //
            " dT  ",
        ],
    ),
    (
        "T = (64.2*1.6 + 96.3*3.2)/(2.4*sin 55)",
        &[
            "    64.2·1.6 + 96.3·3.2",
            "T = ───────────────────",
            "       2.4·sin(55°)    ",
        ],
    ),
    // The bar that divides last is the longer one.
    (
        "L/(d1/dT)", //
        &[
            " L  ", //
            "────", //
            " d1 ", //
            " ── ", //
            " dT ",
        ],
    ),
    (
        "(L/d1)/dT", //
        &[
            " L  ", //
            " ── ", //
            " d1 ", //
            "────", //
            " dT ",
        ],
    ),
    (
        "(T/2 + W1)/L",
        &[
            " T      ", //
            " ─ + W1 ", //
            " 2      ", //
            "────────", //
            "   L    ",
        ],
    ),
    // A sign beside a fraction stands free of its bar.
    (
        "(W1/2)*L",
        &[
            "W1    ", //
            "── · L", //
            "2     ",
        ],
    ),
    (
        "(W1/2)*(L/dT)",
        &[
            "W1   L ", //
            "── · ──", //
            "2    dT",
        ],
    ),
    (
        "-(W1/2)",
        &[
            "  W1", //
            "− ──", //
            "  2 ",
        ],
    ),
    (
        "T - W1/2",
        &[
            "    W1", //
            "T − ──", //
            "    2 ",
        ],
    ),
    (
        "(T + W1/2)*L",
        &[
            "⎛    W1⎞    ", //
            "⎜T + ──⎟ · L", //
            "⎝    2 ⎠    ",
        ],
    ),
    // Chains.
    (
        "T = W1/2 = 39.2 N",
        &[
            "    W1         ", //
            "T = ── = 39.2 N", //
            "    2          ",
        ],
    ),
    (
        "W1/2 ≈ L/(d1/dT)",
        &[
            "W1    L  ", //
            "── ≈ ────", //
            "2     d1 ", //
            "      ── ", //
            "      dT ",
        ],
    ),
    // Units.
    (
        "(12*9.8/2) N",
        &[
            "12·9.8  ", //
            "────── N", //
            "  2     ",
        ],
    ),
    (
        "12 kg*9.8 m/s^2/2",
        &[
            "12 kg·9.8 m/s²", //
            "──────────────", //
            "      2       ",
        ],
    ),
    (
        "1.2e3/2",
        &[
            "1.2·10³", //
            "───────", //
            "   2   ",
        ],
    ),
    // Roots and powers.
    (
        "sqrt(Hx^2 + Hy^2)",
        &[
            " ‾‾‾‾‾‾‾‾‾", //
            "√Hx² + Hy²",
        ],
    ),
    (
        "sqrt(2*L/g)",
        &[
            " ‾‾‾", //
            "│2·L", //
            "√───", //
            "│ g ",
        ],
    ),
    (
        "sqrt(T)^2",
        &[
            "⎛ ‾⎞²", //
            "⎝√T⎠ ",
        ],
    ),
    (
        "(W1/2)^2",
        &[
            "⎛W1⎞²", //
            "⎜──⎟ ", //
            "⎝2 ⎠ ",
        ],
    ),
    (
        "(T/2)^(1/2)",
        &[
            "⎛T⎞      ", //
            "⎜─⎟^(1/2)", //
            "⎝2⎠      ",
        ],
    ),
    ("L^(-2)", &["L⁻²"]),
    ("2^12", &["2¹²"]),
    (
        "tan^-1(Hy/Hx)",
        &[
            "     ⎛Hy⎞", //
            "tan⁻¹⎜──⎟", //
            "     ⎝Hx⎠",
        ],
    ),
];

/// The same in plain letters.
const PLAIN: &[(&str, &[&str])] = &[
    (
        "W_1⊥*d1/dT",
        &[
            "W1perp*d1", //
            "---------", //
            "   dT    ",
        ],
    ),
    (
        "T/sin 55",
        &[
            "     T     ", //
            "-----------", //
            "sin(55 deg)",
        ],
    ),
    (
        "-(W1/2)",
        &[
            "  W1", //
            "- --", //
            "  2 ",
        ],
    ),
    (
        "sqrt(2*L/g)",
        &[
            "    |2*L|", //
            "sqrt(---)", //
            "    | g |",
        ],
    ),
    (
        "(W1/2)^2",
        &[
            "|W1|  ", //
            "(--)^2", //
            "|2 |  ",
        ],
    ),
    (
        "tan^-1(Hy/Hx)",
        &[
            "      |Hy|", //
            "tan^-1(--)", //
            "      |Hx|",
        ],
    ),
    ("L^(-2)", &["L^(-2)"]),
    ("sqrt(Hx^2 + Hy^2)", &["sqrt(Hx^2 + Hy^2)"]),
];

fn formula(line: &str) -> Formula {
    let readings =
        read(line, &vocabulary()).unwrap_or_else(|trouble| panic!("{line}: {trouble:?}"));
    readings[0].formula(&vocabulary())
}

#[test]
fn fractions_are_stacked_on_the_main_row() {
    for (line, expected) in ROWS {
        let block = formula(line).block(true, 99, 9).unwrap();
        let told = block.rows.join("\n");
        assert_eq!(told, expected.join("\n"), "{line}\n{told}");
    }
}

#[test]
fn in_ascii_too() {
    for (line, expected) in PLAIN {
        let block = formula(line).each(&spelled).block(false, 99, 9).unwrap();
        let told = block.rows.join("\n");
        assert_eq!(told, expected.join("\n"), "{line}\n{told}");
        assert!(told.is_ascii(), "{told}");
    }
}

/// A row or column less, and there is none.
#[test]
fn what_finds_no_room_is_not_set() {
    for (line, expected) in ROWS {
        let (width, height) = (expected[0].width(), expected.len());
        let formula = formula(line);
        assert!(formula.block(true, width, height).is_some(), "{line}");
        assert_eq!(formula.block(true, width - 1, height), None, "{line}");
        assert_eq!(formula.block(true, width, height - 1), None, "{line}");
    }
    let deep = format!("{}1{}", "1/(".repeat(30), ")".repeat(30));
    assert_eq!(formula(&deep).block(true, 400, 40), None);
}

/// What carries meaning, in order of its code: no blanks, brackets or bars, superscripts as figures.
fn signs(text: &str) -> Vec<char> {
    let raised = "⁰¹²³⁴⁵⁶⁷⁸⁹⁻";
    let plain: Vec<char> = "0123456789−".chars().collect();
    let lowered = |c: char| {
        raised
            .chars()
            .position(|known| known == c)
            .map(|at| plain[at])
    };
    let carries = |c: &char| !" ()/^⎛⎜⎝⎞⎟⎠│─‾\n".contains(*c);
    let kept = text.chars().filter(carries);
    let mut signs: Vec<char> = kept.map(|c| lowered(c).unwrap_or(c)).collect();
    signs.sort_unstable();
    signs
}

fn check(reading: &Reading, width: usize, height: usize) -> Result<Option<Block>, TestCaseError> {
    let vocabulary = vocabulary();
    let formula = reading.formula(&vocabulary);
    let Some(block) = formula.block(true, width, height) else {
        return Ok(None);
    };
    let told = block.rows.join("\n");
    prop_assert!(
        block.main < block.rows.len() && block.rows.len() <= height,
        "{told}"
    );
    for row in &block.rows {
        prop_assert_eq!(row.width(), block.rows[0].width(), "{}", told);
        prop_assert!(row.width() <= width, "{}", told);
    }
    // Every figure, name, unit and sign of the one row is there, and nothing else.
    prop_assert_eq!(signs(&told), signs(&formula.row()), "{}", told);
    for side in &reading.sides {
        for (id, _) in side.names() {
            let name = vocabulary.names[id.0].symbol.shown();
            prop_assert!(told.contains(&name), "{name}\n{told}");
        }
    }
    Ok(Some(block))
}

proptest! {
    #[test]
    fn nothing_is_lost_and_every_row_is_as_wide(
        pieces in proptest::collection::vec(proptest::sample::select(vec![
            "12", "9.8", "35", "½", "T", "W_b⊥", "m", "g", "θ", "d_T", "sin", "tan^-1", "√", "+", "−", "*",
            "/", "/", "/", "^", "²", "(", "(", ")", ")", "=", "≈", "°", " N", " kg", "π", "e3", "|",
        ]), 0..16),
        (text, _) in expression(),
        width in 1_usize..60,
        height in 1_usize..9,
    ) {
        for line in [pieces.concat(), text] {
            for reading in read(&line, &vocabulary()).unwrap_or_default() {
                let whole = check(&reading, 2000, 400)?;
                prop_assert!(whole.is_some(), "{line}");
                check(&reading, width, height)?;
            }
        }
    }
}
