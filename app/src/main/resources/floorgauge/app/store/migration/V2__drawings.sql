-- Diagrams as markup: they follow from tracks and findings, and are thrown away when either changes.
CREATE TABLE drawings (
    film_id TEXT NOT NULL,
    possession_number INTEGER NOT NULL,
    markup TEXT NOT NULL,
    PRIMARY KEY (film_id, possession_number)
);
