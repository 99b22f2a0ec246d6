// Prints core/include/firnbook/codes.h from the schemas. The header is committed, so that building the
// library needs no tool of ours; a test compares it with what this prints. To renew it:
//   build/tests/capi/firn_codes_header schemas > core/include/firnbook/codes.h
#include <cctype>
#include <fstream>
#include <iostream>
#include <string>
#include <vector>

namespace {

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string::npos) return "";
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

// GrainForm becomes GRAIN_FORM, FCxr becomes FCXR, public_ becomes PUBLIC.
std::string upper_snake(const std::string& name) {
  std::string out;
  for (std::size_t i = 0; i < name.size(); ++i) {
    const auto c = static_cast<unsigned char>(name[i]);
    const bool starts_word =
        std::isupper(c) && i > 0 && std::islower(static_cast<unsigned char>(name[i - 1]));
    if (starts_word) out += '_';
    out += static_cast<char>(std::toupper(c));
  }
  while (!out.empty() && out.back() == '_') out.pop_back();
  return out;
}

std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

struct Entry {
  std::string name, number, comment;
};
struct Block {
  std::string name, comment;
  bool is_enum = true;
  std::vector<Entry> entries;
};

class Reader {
 public:
  std::vector<Block> blocks;

  void read(const std::string& path) {
    std::ifstream file(path);
    if (!file) {
      std::cerr << "cannot read " << path << "\n";
      std::exit(2);
    }
    std::string line;
    while (std::getline(file, line)) take(trimmed(line));
  }

 private:
  void take(std::string line) {
    if (line.compare(0, 3, "///") == 0) {
      comment_ += (comment_.empty() ? "" : " ") + trimmed(line.substr(3));
      return;
    }
    const std::size_t comment = line.find("//");
    if (comment != std::string::npos) line = trimmed(line.substr(0, comment));
    if (line.empty()) return;
    const std::size_t open = line.find('{');
    if (!open_ && open != std::string::npos) {
      start(trimmed(line.substr(0, open)));
      line = trimmed(line.substr(open + 1));
    }
    if (!open_) {
      comment_.clear();
      return;
    }
    const std::size_t close = line.find('}');
    entries(line.substr(0, close));
    if (close != std::string::npos) finish();
  }

  void start(const std::string& heading) {
    const std::size_t space = heading.find(' ');
    const std::string kind = heading.substr(0, space);
    std::string name = heading.substr(space + 1);
    name = trimmed(name.substr(0, name.find_first_of(" :")));
    current_ = {name, comment_, kind == "enum", {}};
    wanted_ = kind == "enum" || kind == "table";
    comment_.clear();
    open_ = true;
  }

  void entries(const std::string& line) {
    const char separator = current_.is_enum ? ',' : ';';
    std::size_t from = 0;
    while (from < line.size()) {
      std::size_t to = line.find(separator, from);
      if (to == std::string::npos) to = line.size();
      entry(trimmed(line.substr(from, to - from)));
      from = to + 1;
    }
  }

  void entry(const std::string& text) {
    if (text.empty()) return;
    Entry entry;
    entry.comment = comment_;
    comment_.clear();
    if (current_.is_enum) {
      const std::size_t equals = text.find('=');
      entry.name = trimmed(text.substr(0, equals));
      entry.number = trimmed(text.substr(equals + 1));
    } else {
      const std::size_t id = text.find("(id:");
      if (id == std::string::npos) return;
      entry.name = trimmed(text.substr(0, text.find(':')));
      entry.number = trimmed(text.substr(id + 4, text.find(')', id) - id - 4));
    }
    current_.entries.push_back(entry);
  }

  void finish() {
    if (wanted_) blocks.push_back(current_);
    open_ = false;
    comment_.clear();
  }

  bool open_ = false, wanted_ = false;
  std::string comment_;
  Block current_;
};

std::string closed(std::string comment) {
  if (!comment.empty() && comment.back() != '.') comment += '.';
  return comment.empty() ? comment : comment + ' ';
}

// Breaks a comment into lines that fit the page.
void print_comment(const std::string& text) {
  std::string line = "/*";
  std::size_t from = 0;
  while (from < text.size()) {
    std::size_t to = text.find(' ', from);
    if (to == std::string::npos) to = text.size();
    const std::string word = text.substr(from, to - from);
    if (line.size() + 1 + word.size() > 104) {
      std::cout << line << "\n";
      line = "  ";
    }
    line += ' ' + word;
    from = to + 1;
  }
  std::cout << line << " */\n";
}

void print(const Block& block) {
  const std::string type = "firn_" + lower(upper_snake(block.name)) + (block.is_enum ? "" : "_field");
  const std::string prefix =
      "FIRN_" + std::string(block.is_enum ? "" : "FIELD_") + upper_snake(block.name) + "_";
  std::cout << "\n";
  print_comment(block.is_enum ? closed(block.comment) + "Since 0.1."
                              : "Field ids of a " + block.name +
                                    ": positions in its `present` and `unreliable` "
                                    "masks. Since 0.1.");
  std::cout << "typedef enum " << type << " {\n";
  for (std::size_t i = 0; i < block.entries.size(); ++i) {
    const Entry& entry = block.entries[i];
    std::cout << "  " << prefix << upper_snake(entry.name) << " = " << entry.number
              << (i + 1 < block.entries.size() ? "," : "");
    if (block.is_enum && !entry.comment.empty()) std::cout << " /* " << entry.comment << " */";
    std::cout << "\n";
  }
  std::cout << "} " << type << ";\n";
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "usage: firn_codes_header SCHEMA_FOLDER\n";
    return 2;
  }
  std::cout
      << "/* Numbers of the schemas: every enumeration, and the field ids of every table of a pit.\n"
         "   Made from the schemas by tests/capi/codes_header.cpp; change the schema, not this file.\n"
         "\n"
         "   Struct fields that hold one of these are uint8_t or uint16_t, so that a number from a newer\n"
         "   writer passes through. Since 0.1. */\n"
         "/* clang-format off */\n"
         "#ifndef FIRNBOOK_CODES_H\n#define FIRNBOOK_CODES_H\n"
         "\n#ifdef __cplusplus\nextern \"C\" {\n#endif\n";
  const std::string folder = argv[1];
  for (const char* name : {"vocabulary", "pit", "bulletin", "report"}) {
    Reader reader;
    reader.read(folder + "/" + name + ".fbs");
    const bool tables = std::string(name) == "pit";
    for (const Block& block : reader.blocks) {
      if (block.is_enum || tables) print(block);
    }
  }
  std::cout << "\n#ifdef __cplusplus\n}\n#endif\n#endif /* FIRNBOOK_CODES_H */\n";
  return 0;
}
