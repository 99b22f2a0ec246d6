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

// Puts the caller's struct into its place in a pit that holds nothing else. The struct's type is known inside
// only: what makes and applies edits exists once, not once a struct.
using Fill = Done (*)(const void* from, firnbook::PitT& fields, Room& room);

template <class From, class To>
Done read_into(const void* from, To& to, Room& room) {
  const auto* given = static_cast<const From*>(from);
  Result<From> read = read_record(given);
  if (!read) return read.failure();
  Done translated = translate(*read, to, room);
  if (!translated || room.said_anything()) return translated;
  return failure_of(FIRN_BAD_EDIT, std::string(struct_name(given)) + " says nothing",
                    "set a field and its bit in present, or give a text");
}

Done put_head(const void* from, firnbook::PitT& pit, Room& room) {
  return read_into<firn_pit_head>(from, pit, room);
}
template <class From, auto kMember>
Done put(const void* from, firnbook::PitT& pit, Room& room) {
  return read_into<From>(from, only(pit.*kMember), room);
}
// A fracture or a reading travels in a test or profile that holds nothing else.
template <class From, auto kList, auto kMember>
Done put_inside(const void* from, firnbook::PitT& pit, Room& room) {
  return read_into<From>(from, only(only(pit.*kList).*kMember), room);
}

Done fill(const firn_recorder& recorder, const void* from, Fill put, firnbook::PitT& fields) {
  Room room(recorder.context->limits.edit.max_bytes);
  return put(from, fields, room);
}

// What a pit has once.
Done record_once(firn_recorder& recorder, const void* from, Fill put, firn_buffer* edit) {
  Result<recording::EditHead> head = next_head(recorder);
  if (!head) return head.failure();
  firnbook::PitT fields;
  Done filled = fill(recorder, from, put, fields);
  if (!filled) return filled;
  return record(recorder, recording::make_set(*head, fields), edit);
}

// Where a thing goes, and what it is.
struct Adding {
  Thing thing;
  const firn_target* into;    // the test or profile it is added to, or null
  const firn_target* change;  // the thing to be changed instead, or null
  const firn_target* about;   // the thing a remark is about, or null
};

Done record_one(firn_recorder& recorder, const void* from, Fill put, const Adding& adding,
                firn_target* target, firn_buffer* edit) {
  Result<recording::EditHead> head = next_head(recorder);
  if (!head) return head.failure();
  firnbook::PitT fields;
  Done filled = fill(recorder, from, put, fields);
  if (!filled) return filled;
  firnbook::Target into, change, about;
  if (adding.into != nullptr) into = target_from(*adding.into);
  if (adding.about != nullptr) about = target_from(*adding.about);
  const firnbook::Target* about_what = adding.about == nullptr ? nullptr : &about;
  firnbook::Target named = recording::target_of(head->key, adding.thing);
  recording::Bytes bytes;
  if (adding.change != nullptr) {
    change = target_from(*adding.change);
    if (change.thing() != adding.thing) {
      return failure_of(FIRN_BAD_ARGUMENT, "the thing to be changed is of another kind than the struct",
                        "give the name that the call for this struct answered");
    }
    named = change;
    bytes = recording::make_change(*head, change, fields, about_what);
  } else {
    bytes = recording::make_add(*head, fields, adding.into == nullptr ? nullptr : &into, about_what);
  }
  Done recorded = record(recorder, bytes, edit);
  if (recorded && target != nullptr) *target = target_to(named);
  return recorded;
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
  return guard({context_of(recorder), error, __func__, {edit}},
               [&]() -> firn::Done { return record_once(*recorder, head, put_head, edit); });
}

firn_status firn_record_site(firn_recorder* recorder, const firn_site* site, firn_buffer* edit,
                             firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(*recorder, site, put<firn_site, &firnbook::PitT::site>, edit);
  });
}

firn_status firn_record_choice(firn_recorder* recorder, const firn_choice* choice, firn_buffer* edit,
                               firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(*recorder, choice, put<firn_choice, &firnbook::PitT::choice>, edit);
  });
}

firn_status firn_record_weather(firn_recorder* recorder, const firn_weather* weather, firn_buffer* edit,
                                firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(*recorder, weather, put<firn_weather, &firnbook::PitT::weather>, edit);
  });
}

firn_status firn_record_surface(firn_recorder* recorder, const firn_surface* surface, firn_buffer* edit,
                                firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(*recorder, surface, put<firn_surface, &firnbook::PitT::surface>, edit);
  });
}

firn_status firn_record_snowpack(firn_recorder* recorder, const firn_snowpack* snowpack, firn_buffer* edit,
                                 firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(*recorder, snowpack, put<firn_snowpack, &firnbook::PitT::snowpack>, edit);
  });
}

firn_status firn_record_assessment(firn_recorder* recorder, const firn_assessment* assessment,
                                   firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(*recorder, assessment, put<firn_assessment, &firnbook::PitT::assessment>, edit);
  });
}

firn_status firn_record_bulletin(firn_recorder* recorder, const firn_bulletin_seen* bulletin,
                                 firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_once(*recorder, bulletin, put<firn_bulletin_seen, &firnbook::PitT::bulletin>, edit);
  });
}

firn_status firn_record_observer(firn_recorder* recorder, const firn_observer* observer,
                                 const firn_target* change, firn_target* target, firn_buffer* edit,
                                 firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(*recorder, observer, put<firn_observer, &firnbook::PitT::observers>,
                      {firnbook::Thing::observer, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_layer(firn_recorder* recorder, const firn_layer* layer, const firn_target* change,
                              firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(*recorder, layer, put<firn_layer, &firnbook::PitT::layers>,
                      {firnbook::Thing::layer, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_temperature(firn_recorder* recorder, const firn_temperature* temperature,
                                    const firn_target* change, firn_target* target, firn_buffer* edit,
                                    firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(*recorder, temperature, put<firn_temperature, &firnbook::PitT::temperatures>,
                      {firnbook::Thing::temperature, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_density_profile(firn_recorder* recorder, const firn_density_profile* profile,
                                        const firn_target* change, firn_target* target, firn_buffer* edit,
                                        firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(*recorder, profile, put<firn_density_profile, &firnbook::PitT::densities>,
                      {firnbook::Thing::density_profile, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_test(firn_recorder* recorder, const firn_test* test, const firn_target* change,
                             firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(*recorder, test, put<firn_test, &firnbook::PitT::tests>,
                      {firnbook::Thing::test, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_sign(firn_recorder* recorder, const firn_sign* sign, const firn_target* change,
                             firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(*recorder, sign, put<firn_sign, &firnbook::PitT::signs>,
                      {firnbook::Thing::sign, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_slide(firn_recorder* recorder, const firn_slide* slide, const firn_target* change,
                              firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(*recorder, slide, put<firn_slide, &firnbook::PitT::slides>,
                      {firnbook::Thing::slide, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_step(firn_recorder* recorder, const firn_step* step, const firn_target* change,
                             firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    return record_one(*recorder, step, put<firn_step, &firnbook::PitT::steps>,
                      {firnbook::Thing::step, nullptr, change, nullptr}, target, edit);
  });
}

firn_status firn_record_remark(firn_recorder* recorder, const firn_remark* remark, const firn_target* change,
                               firn_target* target, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    firn::Result<firn_remark> read = read_record(remark);
    if (!read) return read.failure();
    return record_one(*recorder, remark, put<firn_remark, &firnbook::PitT::remarks>,
                      {firnbook::Thing::remark, nullptr, change, read->about}, target, edit);
  });
}

firn_status firn_record_fracture(firn_recorder* recorder, const firn_fracture* fracture,
                                 const firn_target* into, const firn_target* change, firn_target* target,
                                 firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}}, [&]() -> firn::Done {
    firn::Done one = check_into(into, change);
    if (!one) return one;
    return record_one(*recorder, fracture,
                      put_inside<firn_fracture, &firnbook::PitT::tests, &firnbook::StabilityTestT::fractures>,
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
        *recorder, density,
        put_inside<firn_density, &firnbook::PitT::densities, &firnbook::DensityProfileT::readings>,
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
