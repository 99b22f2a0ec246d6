// Recording by plain structs: each call makes one edit, applies it and hands out its bytes.
#include "firnbook/record.h"

#include "capi/recorder.h"
#include "capi/records.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

using firnbook::Thing;

firnbook::Target target_from(const firn_target& target) {
  return {firnbook::EditId(target.device, target.sequence), target.nth, target.sub,
          static_cast<Thing>(target.thing)};
}

firn_target target_to(const firnbook::Target& target) {
  return {target.edit().device(),
          target.edit().sequence(),
          target.nth(),
          target.sub(),
          static_cast<std::uint8_t>(target.thing()),
          {}};
}

// Reads the caller's struct into its place in a pit that holds nothing else.
template <class From, class To>
Done read_into(firn_recorder& recorder, const From* from, To& to) {
  Result<From> read = read_record(from);
  if (!read) return read.failure();
  Room room(recorder.context->limits.edit.max_bytes);
  Done translated = translate(*read, to, room);
  if (!translated || room.said_anything()) return translated;
  return failure_of(FIRN_BAD_EDIT, std::string(struct_name(from)) + " says nothing",
                    "set a field and its bit in present, or give a text");
}

// What a pit has once. `slot` makes the table's place in the edit's fields.
template <class From, class Slot>
Done record_once(firn_recorder& recorder, const From* from, Slot&& slot, firn_buffer* edit) {
  Result<recording::EditHead> head = next_head(recorder);
  if (!head) return head.failure();
  firnbook::PitT fields;
  Done read = read_into(recorder, from, slot(fields));
  if (!read) return read;
  return record(recorder, recording::make_set(*head, fields), edit);
}

template <class T>
T& only(std::unique_ptr<T>& slot) {
  slot = std::make_unique<T>();
  return *slot;
}

template <class T>
T& only(std::vector<std::unique_ptr<T>>& list) {
  list.push_back(std::make_unique<T>());
  return *list.back();
}

// Where a thing goes, and what it is.
struct Adding {
  Thing thing;
  const firn_target* into;    // the test or profile it is added to, or null
  const firn_target* change;  // the thing to be changed instead, or null
  const firn_target* about;   // the thing a remark is about, or null
};

Done record_thing(firn_recorder& recorder, const recording::EditHead& head, const firnbook::PitT& fields,
                  const Adding& adding, firn_target* target, firn_buffer* edit) {
  firnbook::Target into, change, about;
  if (adding.into != nullptr) into = target_from(*adding.into);
  if (adding.about != nullptr) about = target_from(*adding.about);
  const firnbook::Target* about_what = adding.about == nullptr ? nullptr : &about;
  firnbook::Target named = recording::target_of(head.key, adding.thing);
  recording::Bytes bytes;
  if (adding.change != nullptr) {
    change = target_from(*adding.change);
    if (change.thing() != adding.thing) {
      return failure_of(FIRN_BAD_ARGUMENT, "the thing to be changed is of another kind than the struct",
                        "give the name that the call for this struct answered");
    }
    named = change;
    bytes = recording::make_change(head, change, fields, about_what);
  } else {
    bytes = recording::make_add(head, fields, adding.into == nullptr ? nullptr : &into, about_what);
  }
  Done recorded = record(recorder, bytes, edit);
  if (recorded && target != nullptr) *target = target_to(named);
  return recorded;
}

template <class From, class Slot>
Done record_one(firn_recorder& recorder, const From* from, Slot&& slot, const Adding& adding,
                firn_target* target, firn_buffer* edit) {
  Result<recording::EditHead> head = next_head(recorder);
  if (!head) return head.failure();
  firnbook::PitT fields;
  Done read = read_into(recorder, from, slot(fields));
  if (!read) return read;
  return record_thing(recorder, *head, fields, adding, target, edit);
}

Done check_into(const firn_target* into, const firn_target* change) {
  if ((into == nullptr) != (change == nullptr)) return done();
  return failure_of(FIRN_BAD_ARGUMENT, "give one of into and change, and not both",
                    "into names the test or profile that gets one more; change the one to be changed");
}

// An edit about things that are there already, made by `make` from the head.
template <class Make>
Done record_about(firn_recorder& recorder, firn_buffer* edit, Make&& make) {
  Result<recording::EditHead> head = next_head(recorder);
  if (!head) return head.failure();
  return record(recorder, make(*head), edit);
}

}  // namespace
}  // namespace firn::capi

firn_status firn_record_pit_head(firn_recorder* recorder, const firn_pit_head* head, firn_buffer* edit,
                                 firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(
        *recorder, head, [](firnbook::PitT & pit) -> auto& { return pit; }, edit);
  });
}

firn_status firn_record_site(firn_recorder* recorder, const firn_site* site, firn_buffer* edit,
                             firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(
        *recorder, site, [](firnbook::PitT & pit) -> auto& { return only(pit.site); }, edit);
  });
}

firn_status firn_record_choice(firn_recorder* recorder, const firn_choice* choice, firn_buffer* edit,
                               firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(
        *recorder, choice, [](firnbook::PitT & pit) -> auto& { return only(pit.choice); }, edit);
  });
}

firn_status firn_record_weather(firn_recorder* recorder, const firn_weather* weather, firn_buffer* edit,
                                firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(
        *recorder, weather, [](firnbook::PitT & pit) -> auto& { return only(pit.weather); }, edit);
  });
}

firn_status firn_record_surface(firn_recorder* recorder, const firn_surface* surface, firn_buffer* edit,
                                firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(
        *recorder, surface, [](firnbook::PitT & pit) -> auto& { return only(pit.surface); }, edit);
  });
}

firn_status firn_record_snowpack(firn_recorder* recorder, const firn_snowpack* snowpack, firn_buffer* edit,
                                 firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(
        *recorder, snowpack, [](firnbook::PitT & pit) -> auto& { return only(pit.snowpack); }, edit);
  });
}

firn_status firn_record_assessment(firn_recorder* recorder, const firn_assessment* assessment,
                                   firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(
        *recorder, assessment, [](firnbook::PitT & pit) -> auto& { return only(pit.assessment); }, edit);
  });
}

firn_status firn_record_bulletin(firn_recorder* recorder, const firn_bulletin_seen* bulletin,
                                 firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(
        *recorder, bulletin, [](firnbook::PitT & pit) -> auto& { return only(pit.bulletin); }, edit);
  });
}

firn_status firn_record_observer(firn_recorder* recorder, const firn_observer* observer,
                                 const firn_target* change, firn_target* target, firn_buffer* edit,
                                 firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(
        *recorder, observer, [](firnbook::PitT & pit) -> auto& { return only(pit.observers); },
        {firnbook::Thing::observer, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_layer(firn_recorder* recorder, const firn_layer* layer, const firn_target* change,
                              firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(
        *recorder, layer, [](firnbook::PitT & pit) -> auto& { return only(pit.layers); },
        {firnbook::Thing::layer, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_temperature(firn_recorder* recorder, const firn_temperature* temperature,
                                    const firn_target* change, firn_target* target, firn_buffer* edit,
                                    firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(
        *recorder, temperature, [](firnbook::PitT & pit) -> auto& { return only(pit.temperatures); },
        {firnbook::Thing::temperature, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_density_profile(firn_recorder* recorder, const firn_density_profile* profile,
                                        const firn_target* change, firn_target* target, firn_buffer* edit,
                                        firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(
        *recorder, profile, [](firnbook::PitT & pit) -> auto& { return only(pit.densities); },
        {firnbook::Thing::density_profile, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_test(firn_recorder* recorder, const firn_test* test, const firn_target* change,
                             firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(
        *recorder, test, [](firnbook::PitT & pit) -> auto& { return only(pit.tests); },
        {firnbook::Thing::test, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_sign(firn_recorder* recorder, const firn_sign* sign, const firn_target* change,
                             firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(
        *recorder, sign, [](firnbook::PitT & pit) -> auto& { return only(pit.signs); },
        {firnbook::Thing::sign, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_slide(firn_recorder* recorder, const firn_slide* slide, const firn_target* change,
                              firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(
        *recorder, slide, [](firnbook::PitT & pit) -> auto& { return only(pit.slides); },
        {firnbook::Thing::slide, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_remark(firn_recorder* recorder, const firn_remark* remark, const firn_target* change,
                               firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    firn::Result<firn_remark> read = read_record(remark);
    if (!read) return read.failure();
    return record_one(
        *recorder, remark, [](firnbook::PitT & pit) -> auto& { return only(pit.remarks); },
        {firnbook::Thing::remark, nullptr, change, read->about}, target, edit);
  });
}

firn_status firn_record_fracture(firn_recorder* recorder, const firn_fracture* fracture,
                                 const firn_target* into, const firn_target* change, firn_target* target,
                                 firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    firn::Done one = check_into(into, change);
    if (!one) return one;
    return record_one(
        *recorder, fracture, [](firnbook::PitT & pit) -> auto& { return only(only(pit.tests).fractures); },
        {firnbook::Thing::fracture, into, change, nullptr}, target, edit);
  });
}

firn_status firn_record_density(firn_recorder* recorder, const firn_density* density, const firn_target* into,
                                const firn_target* change, firn_target* target, firn_buffer* edit,
                                firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    firn::Done one = check_into(into, change);
    if (!one) return one;
    return record_one(
        *recorder, density, [](firnbook::PitT & pit) -> auto& { return only(only(pit.densities).readings); },
        {firnbook::Thing::density, into, change, nullptr}, target, edit);
  });
}

firn_status firn_record_remove(firn_recorder* recorder, const firn_target* target, firn_buffer* edit,
                               firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    if (target == nullptr) return null_argument("target");
    return record_about(*recorder, edit, [&](const firn::recording::EditHead& head) {
      return firn::recording::make_remove(head, target_from(*target));
    });
  });
}

firn_status firn_record_clear(firn_recorder* recorder, const firn_target* target, uint8_t thing,
                              uint16_t field, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    firnbook::Target named;
    if (target != nullptr) named = target_from(*target);
    const firnbook::Thing about = target == nullptr ? static_cast<firnbook::Thing>(thing) : named.thing();
    const std::vector<firnbook::Place> cleared = {firnbook::Place(-1, -1, field, about)};
    return record_about(*recorder, edit, [&](const firn::recording::EditHead& head) {
      return firn::recording::make_clear(head, target == nullptr ? nullptr : &named, cleared);
    });
  });
}

firn_status firn_record_split_layer(firn_recorder* recorder, const firn_target* layer, const firn_depth* at,
                                    firn_target* upper, firn_target* lower, firn_buffer* edit,
                                    firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    if (layer == nullptr) return null_argument("layer");
    if (at == nullptr) return null_argument("at");
    const firn_target whole = *layer;
    firn::recording::EditKey key;
    firn::Done recorded = record_about(*recorder, edit, [&](const firn::recording::EditHead& head) {
      key = head.key;
      return firn::recording::make_split(head, target_from(whole), depth_of(*at));
    });
    if (!recorded) return recorded;
    if (upper != nullptr) *upper = whole;
    if (lower != nullptr) *lower = target_to(firn::recording::target_of(key, firnbook::Thing::layer, 1));
    return firn::done();
  });
}

firn_status firn_record_merge_layers(firn_recorder* recorder, const firn_target* layer,
                                     const firn_target* neighbour, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    if (layer == nullptr) return null_argument("layer");
    if (neighbour == nullptr) return null_argument("neighbour");
    return record_about(*recorder, edit, [&](const firn::recording::EditHead& head) {
      return firn::recording::make_merge(head, target_from(*layer), target_from(*neighbour));
    });
  });
}

firn_status firn_record_shift_depths(firn_recorder* recorder, int32_t amount_10um, firn_buffer* edit,
                                     firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_about(*recorder, edit, [&](const firn::recording::EditHead& head) {
      return firn::recording::make_shift(head, amount_10um);
    });
  });
}

firn_status firn_record_rescale_depths(firn_recorder* recorder, int32_t amount_10um, int32_t base_10um,
                                       firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_about(*recorder, edit, [&](const firn::recording::EditHead& head) {
      return firn::recording::make_rescale(head, amount_10um, base_10um);
    });
  });
}

firn_status firn_record_undo(firn_recorder* recorder, uint64_t device, uint64_t sequence, firn_buffer* edit,
                             firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_about(*recorder, edit, [&](const firn::recording::EditHead& head) {
      return firn::recording::make_undo(head, {device, sequence});
    });
  });
}

firn_status firn_record_redo(firn_recorder* recorder, uint64_t device, uint64_t sequence, firn_buffer* edit,
                             firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_about(*recorder, edit, [&](const firn::recording::EditHead& head) {
      return firn::recording::make_redo(head, {device, sequence});
    });
  });
}
