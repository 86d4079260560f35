"""Small ways to break a C++ source that clang-format has laid out: found by the eye of a regular expression, which is why
some do not compile. Comments, texts, preprocessor lines and declarations of types are left alone."""
import re

COMMENT_OR_TEXT = re.compile(r'R"(\w*)\(.*?\)\1"|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])\'|//[^\n]*|/\*.*?\*/', re.S)
# `reserve` changes nothing that anyone could see.
LEFT_ALONE = re.compile(r"^\s*(#|using |namespace |template|static_assert|struct |class |enum |case |friend |\[\[|.*\.reserve\()")

# (what stands there, what it becomes)
EXCHANGED = [
    (r"(?<= )<(?= )", ["<=", ">"]), (r"(?<= )<=(?= )", ["<", ">"]), (r"(?<= )>(?= )", [">=", "<"]),
    (r"(?<= )>=(?= )", [">", "<"]), (r"(?<= )==(?= )", ["!="]), (r"(?<= )!=(?= )", ["=="]),
    (r"(?<= )&&(?= )", ["||"]), (r"(?<= )\|\|(?= )", ["&&"]),
    (r"(?<=[\w)\]] )\+(?= )", ["-"]), (r"(?<=[\w)\]] )-(?= )", ["+"]),
    (r"(?<=[\w)\]] )\*(?= [\w(])", ["/"]), (r"(?<=[\w)\]] )/(?= )", ["*"]), (r"(?<= )%(?= )", ["*"]),
    (r"(?<= )\+=(?= )", ["-="]), (r"(?<= )-=(?= )", ["+="]),
    (r"\bstd::min\b(?!_)", ["std::max"]), (r"\bstd::max\b(?!_)", ["std::min"]),
    (r"\btrue\b", ["false"]), (r"\bfalse\b", ["true"]),
    (r"\bcontinue;", ["break;"]), (r"(?<=[ )])!(?=\w)", [""]), (r"(?<=\()!(?=\w)", [""]),
    (r"\blower_bound\b", ["upper_bound"]), (r"\bupper_bound\b", ["lower_bound"]),
    (r"\ball_of\b", ["any_of"]), (r"\bany_of\b", ["all_of"]), (r"\bnone_of\b", ["any_of"]),
    (r"\bmin_element\b", ["max_element"]), (r"\bmax_element\b", ["min_element"]),
    # Units: a thousandth, or another kind of the same type.
    (r"\bLength::fromMm\((?=[^)])", ["Length::fromMm(1e-3 * "]), (r"\.mm\(\)", [".mm() * 1e3"]), (r"(?<=[\w)])\.nm\b", [".nm * 1000"]),
    (r"\b(Volts|Ohms|Amperes|Farads|Seconds|Celsius)\((?=[\w(])", [r"\g<1>(1e-3 * "]),
    (r"(?<=\w)\.x\b", [".y"]), (r"(?<=\w)\.y\b", [".x"]), (r"(?<=\w)\.start\b", [".end"]), (r"(?<=\w)\.end\b(?!\()", [".start"]),
    (r"\bSide::top\b", ["Side::bottom"]), (r"\bSide::bottom\b", ["Side::top"]),
    (r"\.front\(\)", [".back()"]), (r"\.back\(\)", [".front()"]),
]
NUMBER = re.compile(r"(?<![\w.])(\d[\d']*\.?\d*(?:e[-+]?\d+)?)(?![\w.'])", re.I)
CONDITION = re.compile(r"^\s*(?:\} else )?(?:if|while) \(")
STATEMENT = re.compile(r"^\s*(?!return|auto |const |constexpr |static |std::\w+<|else|break|continue|if|for|while|do\b|case|default|using)"
                       r"[\w:.>\[\]()*-]+( [-+|&]?= .*|\(.*\));$")
ARGUMENTS = re.compile(r"(?<=\()([\w.:>()-]+), ([\w.:>-]+(?:\(\))?)(?=[,)])")


class Mutation:
    def __init__(self, file, text, begin, end, becomes, kind):
        self.file, self.whole, self.begin, self.end, self.becomes, self.kind = file, text, begin, end, becomes, kind

    def text(self):
        return self.whole[:self.begin] + self.becomes + self.whole[self.end:]

    def line(self):
        """Number of the line, the line, and what it becomes."""
        start = self.whole.rfind("\n", 0, self.begin) + 1
        stop = self.whole.find("\n", self.end)
        return (self.whole.count("\n", 0, self.begin) + 1, self.whole[start:stop].strip(),
                (self.whole[start:self.begin] + self.becomes + self.whole[self.end:stop]).strip())

    def identity(self):
        """Holds when lines above come and go."""
        return (self.file, *self.line()[1:])

    def key(self):
        return f"{self.file}:{self.line()[0]}: {self.line()[1]} => {self.line()[2]}"

    def told(self):
        return self.key()


def numbers(text):
    """A tenth more or less where a tenth makes a difference, else the next whole number."""
    plain = text.replace("'", "")
    if re.search(r"[.e]", plain, re.I):
        value = float(plain)
        return [repr(value * 1.1), repr(value * 0.9)] if value else ["0.1"]
    value = int(plain)
    step = max(1, value // 10)
    return [str(value + step)] + ([str(value - step)] if value else [])


def closing(line, begin):
    """Where the bracket that was opened before `begin` is closed; none: on another line."""
    depth = 1
    for i in range(begin, len(line)):
        depth += (line[i] == "(") - (line[i] == ")")
        if depth == 0:
            return i
    return None


def of_text(file, text):
    found = []
    blank = COMMENT_OR_TEXT.sub(lambda m: re.sub(r"[^\n]", "\x01", m.group()), text)
    place = 0
    for line in blank.split("\n"):
        if not LEFT_ALONE.match(line):
            def put(begin, end, becomes, kind):
                found.append(Mutation(file, text, place + begin, place + end, becomes, kind))
            for pattern, others in EXCHANGED:
                for match in re.finditer(pattern, line):
                    for other in others:
                        put(*match.span(), match.expand(other), "exchanged")
            for match in NUMBER.finditer(line):
                for other in numbers(match.group()):
                    put(*match.span(), other, "number")
            if (match := CONDITION.match(line)) and (end := closing(line, match.end())):
                put(match.end(), end, "true", "condition")
                put(match.end(), end, "false", "condition")
            if STATEMENT.match(line) and line.count("(") == line.count(")"):
                put(len(line) - len(line.lstrip()), len(line), ";", "statement left out")
            for match in ARGUMENTS.finditer(line):
                one, other = match.groups()
                if one != other and one.count("(") == one.count(")"):
                    put(*match.span(), f"{other}, {one}", "arguments")
        place += len(line) + 1
    return found


def of_file(root, name):
    with open(f"{root}/{name}") as source:
        return of_text(name, source.read())
