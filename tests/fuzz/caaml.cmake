firn_fuzz(caaml DEPENDS caaml recording)
