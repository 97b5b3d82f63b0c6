-- Apart from the tables: an import that outweighs what is there drops these and makes them again.
CREATE UNIQUE INDEX unit_label_by_text ON unit_label (text);
CREATE INDEX lot_by_lot ON lot (lot);
CREATE INDEX unit_by_unit ON unit (unit);
CREATE INDEX unit_by_lot ON unit (lot);
CREATE INDEX attempt_by_unit ON attempt (unit);
CREATE INDEX attempt_by_attempt ON attempt (attempt);
CREATE INDEX exit_by_unit ON exit (unit);
CREATE INDEX comeback_by_unit ON comeback (unit);
CREATE INDEX part_by_part ON part (part);
CREATE INDEX part_by_unit ON part (from_unit);
CREATE INDEX part_by_attempt ON part (attempt);
CREATE INDEX recipe_by_panel ON recipe (panel);
CREATE INDEX bid_by_bid ON bid (bid);
CREATE INDEX bid_by_lot ON bid (lot);
CREATE INDEX offer_by_unit ON offer (unit);
