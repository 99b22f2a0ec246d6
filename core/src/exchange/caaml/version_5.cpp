// CAAML 5.0 where it differs (CAAMLv5_SnowProfileIACS.xsd, read). It is only read.
//   metaDataProperty/MetaData   dateTimeReport, srcRef, comment and customData of the profile
//   validTime                   now timeRef/recordTime
//   locRef/ObsPoint             now locRef; description now a comment
//   weather, surface, heights   stand in SnowProfileMeasurements itself
//   snowHeight, swe             now height, waterEquivalent; swe in mm
//   stratProfile/Layer          holds density, lwc, specific surface, strength and impurities of its own,
//   which
//                               are profiles now
//   uomDepthTop and the like    one unit for all readings of a profile
//   comment, customData         stand in the thing itself
#include <memory>

#include "exchange/caaml/read_values.h"

namespace firn::exchange::caaml {
namespace {

using firnbook::Depth;
using firnbook::Layer;
using firnbook::LayerT;
using firnbook::Pit;
using firnbook::Snowpack;
using firnbook::Surface;
using firnbook::Weather;
using pugi::xml_node;

}  // namespace

const Type kVersion5 = {};

}  // namespace firn::exchange::caaml
