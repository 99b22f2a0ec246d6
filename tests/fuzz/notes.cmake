firn_fuzz(notes DEPENDS notation recording)
