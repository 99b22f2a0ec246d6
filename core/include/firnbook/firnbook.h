/* Everything: snow pits recorded, checked, interpreted and drawn. Start with context.h. Since 0.1. */
#ifndef FIRNBOOK_H
#define FIRNBOOK_H

#include "firnbook/buffer.h"
#include "firnbook/bulletin.h"
#include "firnbook/codes.h"
#include "firnbook/compare.h"
#include "firnbook/context.h"
#include "firnbook/convert.h"
#include "firnbook/draw.h"
#include "firnbook/export.h"
#include "firnbook/guided.h"
#include "firnbook/interpret.h"
#include "firnbook/journal.h"
#include "firnbook/language.h"
#include "firnbook/note.h"
#include "firnbook/notes.h"
#include "firnbook/pit.h"
#include "firnbook/procedure.h"
#include "firnbook/record.h"
#include "firnbook/status.h"
#include "firnbook/types.h"
#include "firnbook/version.h"

#endif /* FIRNBOOK_H */
