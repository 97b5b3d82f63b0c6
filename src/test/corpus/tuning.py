"""The tuning group: the reader may be tuned to these files."""

import tuning_fields
import tuning_hostile
import tuning_sheets
import tuning_text
import tuning_words

FILES = {**tuning_sheets.FILES, **tuning_fields.FILES, **tuning_text.FILES, **tuning_words.FILES, **tuning_hostile.FILES}
