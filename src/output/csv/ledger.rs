//! `ledger.csv`: start, every way in and out, now, and what is missing, per conserved quantity.

use crate::engine::ledger::{Account, Ledger};
use crate::model::conserved::FLUXES;

use super::{Head, NotANumber, Row, Table};

const FILE: &str = "ledger.csv";

/// One row per conserved quantity.
///
/// `minute` is the end of the account, named if a number is none.
pub fn table(ledger: &Ledger, minute: u32) -> Result<Table, NotANumber> {
    let rows = ledger
        .accounts
        .iter()
        .map(|account| row(account, minute))
        .collect::<Result<_, _>>()?;
    Ok(Table {
        file: FILE,
        heads: heads(),
        rows,
    })
}

fn heads() -> Vec<Head> {
    let own = "in the unit of its row";
    let mut heads = vec![
        Head::plain("quantity", "what is conserved", "list of the model"),
        Head::plain("unit", "unit of the whole row", "list of the model"),
        Head::new("start", own, "in the tank at filling", "sum over the pools"),
    ];
    heads.extend(FLUXES.iter().map(|flux| {
        Head::new(
            &stem(flux.name()),
            own,
            &format!("{}; into the tank counts positive", flux.name()),
            "added up over all steps",
        )
    }));
    heads.extend([
        Head::new(
            "now",
            own,
            "in the tank at the end of the run",
            "sum over the pools",
        ),
        Head::new(
            "error",
            own,
            "what the account misses",
            "now − start − all ways in and out",
        ),
        Head::plain(
            "relative_error",
            "the error as a share of all that moved",
            "error over the sum of sizes",
        ),
    ]);
    heads
}

fn stem(words: &str) -> String {
    words.replace([' ', '-'], "_")
}

fn row(account: &Account, minute: u32) -> Result<Row, NotANumber> {
    let mut row = Row::of([account.quantity.name(), account.quantity.unit()]);
    let numbers = std::iter::once(account.start)
        .chain(account.crossed)
        .chain([account.now, account.error(), account.relative_error()]);
    for value in numbers {
        row.number(FILE, account.quantity.name(), minute, value)?;
    }
    Ok(row)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use crate::model::conserved::QUANTITIES;

    #[test]
    fn every_quantity_has_a_row_and_every_way_a_column() {
        let mut ledger = Example::default().run().ledger;
        ledger.accounts[0].crossed[1] = 2.5;
        let table = table(&ledger, 0).unwrap();
        assert_eq!(table.rows.len(), QUANTITIES.len());
        assert!(table.rows.iter().all(|row| row.len() == table.heads.len()));
        let error = table.heads.iter().position(|h| h.name == "error").unwrap();
        assert_eq!(&table.rows[0][error], "-2.5");
    }
}
