//! Tables of numbers in `tests/reference`, with named columns.

/// A table as it was read.
pub struct Table {
    columns: Vec<String>,
    rows: Vec<csv::StringRecord>,
}

impl Table {
    /// The table of a name; lines that start with `#` are its head.
    pub fn read(name: &str) -> Table {
        let path = format!("tests/reference/{name}.csv");
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .from_path(&path)
            .unwrap();
        Table {
            columns: reader.headers().unwrap().iter().map(String::from).collect(),
            rows: reader.records().map(|row| row.unwrap()).collect(),
        }
    }
    /// How many rows there are.
    pub fn len(&self) -> usize {
        self.rows.len()
    }
    fn place(&self, column: &str) -> usize {
        self.columns
            .iter()
            .position(|name| name == column)
            .unwrap_or_else(|| panic!("no column {column}"))
    }
    /// The words of a column.
    pub fn words(&self, column: &str) -> Vec<&str> {
        let place = self.place(column);
        self.rows.iter().map(|row| &row[place]).collect()
    }
    /// The numbers of some columns, row by row; rows where one is missing are left out.
    pub fn numbers<const N: usize>(&self, columns: [&str; N]) -> Vec<[f64; N]> {
        let places = columns.map(|column| self.place(column));
        let number = |row: &csv::StringRecord, place: usize| row[place].parse::<f64>().ok();
        self.rows
            .iter()
            .filter_map(|row| {
                let found = places.map(|place| number(row, place));
                found
                    .iter()
                    .all(Option::is_some)
                    .then(|| found.map(Option::unwrap))
            })
            .collect()
    }
}
