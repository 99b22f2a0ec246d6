firn_fuzz(bulletin SEEDS ../bulletins/*.json DEPENDS bulletin json)
