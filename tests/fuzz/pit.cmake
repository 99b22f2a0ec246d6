firn_fuzz(pit SEEDS ../conformance/kit/random-0[1-3].firn ../conformance/kit/*-bowl-entry.firn DEPENDS capi)
