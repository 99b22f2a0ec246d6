firn_fuzz(card DEPENDS card)
