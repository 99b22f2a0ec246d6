firn_fuzz(json SEEDS ../conformance/kit/random-0*.json ../conformance/kit/*-bowl-entry*.json DEPENDS json recording)
