//! A table as JSON: what each column is, then one object per row.

use serde_json::{Map, Value, json};

use super::{Cell, Table};

/// The whole text, ending with a line feed.
pub fn text(table: &Table) -> String {
    let columns = table.heads.iter().map(|head| {
        json!({ "name": head.name, "unit": head.unit, "meaning": head.meaning, "derived": head.derived })
    });
    let rows = table.rows.iter().map(|cells| {
        let pairs = table.heads.iter().zip(cells);
        let row: Map<String, Value> = pairs
            .map(|(head, cell)| (head.name.clone(), value(cell)))
            .collect();
        Value::Object(row)
    });
    let whole = json!({
        "columns": columns.collect::<Vec<_>>(),
        "rows": rows.collect::<Vec<_>>(),
    });
    format!("{whole:#}\n")
}

/// Numbers have the digits that the CSV has.
fn value(cell: &Cell) -> Value {
    match cell {
        Cell::Empty => Value::Null,
        Cell::Words(words) => Value::from(words.as_str()),
        Cell::Count(count) => Value::from(*count),
        Cell::Number(_) => cell.words().parse::<f64>().map_or(Value::Null, Value::from),
    }
}
