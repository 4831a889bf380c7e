//! A quick form of `cargo bench --bench naming`: wrong lines are named rightly, and no right line
//! is called wrong. The goals are the project's own.

#[path = "../benches/naming/forms.rs"]
mod forms;
#[path = "../benches/naming/measure.rs"]
mod measure;

use leverwright::lesson::built_in;
use measure::{COMMONEST, Share, measure};

#[test]
fn verif_the_commonest_mistakes_are_named_and_right_lines_hold() {
    let (mut expressions, mut numbers) = (Share::default(), Share::default());
    for lesson in built_in() {
        let findings = measure(&lesson, 4, 2024);
        assert_eq!(findings.draws, 4, "{}", lesson.id());
        assert!(findings.right_lines > 200, "{}", findings.right_lines);
        assert_eq!(findings.condemned, Vec::<String>::new(), "{}", lesson.id());
        let [here, bare, _] = findings.total(|id| COMMONEST.contains(&id));
        let [.., balances] = findings.total(|_| true);
        let missed: Vec<&String> = findings
            .rows
            .iter()
            .filter(|(id, _)| COMMONEST.contains(id))
            .flat_map(|(_, row)| &row.missed)
            .collect();
        assert_eq!(here.named, here.typed, "{missed:#?}");
        let missed = findings.rows.values().flat_map(|row| &row.missed);
        let missed: Vec<&String> = missed.filter(|line| line.contains(" balance ")).collect();
        assert_eq!(balances.named, balances.typed, "{missed:#?}");
        assert!(balances.typed > 30, "{balances:?}");
        expressions.add(here);
        numbers.add(bare);
    }
    assert!(expressions.typed > 150, "{expressions:?}");
    assert!(numbers.percent() >= 97.0, "{numbers:?}");
}
