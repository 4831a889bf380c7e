//! What only shows once a whole system is known, told where it stands in the file.

use super::decode::Item;
use super::fault::FaultKind;
use super::system_names::Reader;
use super::system_read::Lists;
use super::texts::UNKNOWN;
use crate::problem::GivenId;
use crate::system::{Fault, Parts, System, Weight, WeightKind};

/// The system of these parts, or its faults in the report.
pub(super) fn checked<'a>(
    parts: Parts,
    item: &Item<'a>,
    lists: &Lists<'a>,
    reader: &mut Reader<'_, 'a>,
) -> Option<System> {
    let (placed, marks) = placed(&parts, lists, reader);
    match System::new(placed) {
        Ok(_) => match System::new(parts) {
            Ok(system) => Some(system),
            Err(faults) => {
                let kinds = faults.into_iter().map(FaultKind::Unsound);
                kinds.for_each(|kind| reader.report.add(item, kind));
                None
            }
        },
        Err(faults) => {
            tell(faults, &marks, item, reader);
            None
        }
    }
}

/// Puts into the report what cannot be drawn of parts that have other faults, told already.
pub(super) fn beside<'a>(
    parts: &Parts,
    item: &Item<'a>,
    lists: &Lists<'a>,
    reader: &mut Reader<'_, 'a>,
) {
    let sought = parts.sought.as_ref().map(|sought| sought.given);
    let unread: Vec<GivenId> = (parts.givens.iter().enumerate())
        .filter(|(_, given)| given.written == UNKNOWN)
        .map(|(index, _)| GivenId(index))
        .filter(|id| sought != Some(*id))
        .collect();
    let (placed, marks) = placed(parts, lists, reader);
    let mut faults = System::undrawable(&placed, &unread);
    // These are told where the places are read.
    faults.retain(|fault| !matches!(fault, Fault::OffLeg { .. } | Fault::NoLength { .. }));
    tell(faults, &marks, item, reader);
}

/// A part in the file: its path, its noun, where it stands.
type Mark<'a> = (String, String, Item<'a>);

/// Faults name the part by its noun, which two parts may share. So the nouns are exchanged for
/// places in the file, and each fault leads to its part.
fn placed<'a>(parts: &Parts, lists: &Lists<'a>, reader: &Reader<'_, 'a>) -> (Parts, Vec<Mark<'a>>) {
    let mut placed = parts.clone();
    let mut marks = Vec::new();
    for (noun, at) in nouns(&mut placed)
        .into_iter()
        .zip(items(lists).chain(reader.pieces.iter()))
    {
        marks.push((at.path.clone(), noun.clone(), at.clone()));
        noun.clone_from(&at.path);
    }
    (placed, marks)
}

fn tell<'a>(faults: Vec<Fault>, marks: &[Mark<'a>], item: &Item<'a>, reader: &mut Reader<'_, 'a>) {
    for mut fault in faults {
        let mark = what(&mut fault).and_then(|what| {
            let mark = marks.iter().find(|(path, _, _)| path == what)?;
            what.clone_from(&mark.1);
            Some(mark.2.clone())
        });
        let told = symbol(&fault).and_then(|symbol| reader.told_at(symbol).cloned());
        let range = is_of_range(&fault).then(|| range(item)).flatten();
        let at = range.or(mark).or(told).unwrap_or_else(|| item.clone());
        reader.report.add(&at, FaultKind::Unsound(fault));
    }
}

fn nouns(parts: &mut Parts) -> Vec<&mut String> {
    let bodies = parts.bodies.iter_mut().map(|body| &mut body.noun);
    let mut pieces = Vec::new();
    let mut weights = Vec::new();
    for Weight { noun, kind, .. } in &mut parts.weights {
        weights.push(noun);
        if let WeightKind::Lamina(lamina) = kind {
            pieces.extend(lamina.pieces.iter_mut().map(|piece| &mut piece.noun));
        }
    }
    let loads = parts.loads.iter_mut().map(|load| &mut load.noun);
    let cords = parts.cords.iter_mut().map(|cord| &mut cord.noun);
    let holds = parts.holds.iter_mut().map(|hold| &mut hold.noun);
    bodies
        .chain(weights)
        .chain(loads)
        .chain(cords)
        .chain(holds)
        .chain(pieces)
        .collect()
}

fn items<'l, 'a>(lists: &'l Lists<'a>) -> impl Iterator<Item = &'l Item<'a>> {
    [
        &lists.bodies,
        &lists.weights,
        &lists.loads,
        &lists.ropes,
        &lists.holds,
    ]
    .into_iter()
    .flatten()
}

/// The part that a fault is about.
fn what(fault: &mut Fault) -> Option<&mut String> {
    match fault {
        Fault::NoSuch { what }
        | Fault::OffLeg { what, .. }
        | Fault::StartsAtLater { what }
        | Fault::NoDirection { what }
        | Fault::FrictionNotSquare { what }
        | Fault::NoLength { what }
        | Fault::Idle { what }
        | Fault::HoleTooLarge { what }
        | Fault::HoleOutside { what }
        | Fault::Overlap { what }
        | Fault::AllHoles { what }
        | Fault::NoMass { what }
        | Fault::TurnsKnot { what }
        | Fault::ApartAtKnot { what }
        | Fault::Loose { what } => Some(what),
        // The part that is off at the beginning of the range, told there.
        Fault::NoValue { fault, .. } => what(fault),
        _ => None,
    }
}

/// True for a fault of the range of what is sought as a whole.
fn is_of_range(fault: &Fault) -> bool {
    matches!(fault, Fault::NoValue { .. } | Fault::EmptyRange)
}

/// Where the range of what is sought begins in the file.
fn range<'a>(system: &Item<'a>) -> Option<Item<'a>> {
    system.inside("sought")?.inside("from")
}

/// The number that a fault is about.
fn symbol(fault: &Fault) -> Option<&str> {
    match fault {
        Fault::NotPositive { symbol }
        | Fault::AngleOutOfRange { symbol, .. }
        | Fault::WrongDimension { symbol, .. }
        | Fault::Unused { symbol }
        | Fault::NameTwice { symbol } => Some(symbol),
        _ => None,
    }
}
