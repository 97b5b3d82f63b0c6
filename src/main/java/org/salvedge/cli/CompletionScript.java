package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The script for bash: commands, options and fixed words stand in it; labels and the shop's codes are asked for. */
final class CompletionScript {
    private static final Map<String, String> ASKED =
            Map.of("--fault", "faults", "--fix", "fixes", "--lot", "lots", "--by", "keys", "--supplier", "suppliers");
    private static final List<String> FILES = List.of("FILE", "DIR");

    private CompletionScript() {}

    static String text() {
        StringBuilder options = new StringBuilder();
        Map<String, String> values = new TreeMap<>();
        List<String> units = new ArrayList<>();
        List<String> unitsOrLots = new ArrayList<>();
        StringBuilder within = new StringBuilder();
        for (String name : Commands.names()) {
            Command command = Commands.create(name);
            if (command == null) {
                continue;
            }
            CommandSpec spec = CommandLines.of(command, name).getCommandSpec();
            List<String> names = new ArrayList<>();
            for (OptionSpec option : spec.options()) {
                names.add(option.longestName());
                collect(values, name, option);
            }
            options.append("        ")
                    .append(name)
                    .append(") options=\"")
                    .append(String.join(" ", names))
                    .append("\" ;;\n");
            if (!command.within().isEmpty()) {
                within.append("        ")
                        .append(name)
                        .append(") COMPREPLY=($(compgen -W \"")
                        .append(String.join(" ", command.within().keySet()))
                        .append("\" -- \"$word\")) ;;\n");
            }
            for (ArgSpec word : spec.positionalParameters()) {
                if (word.paramLabel().equals("UNIT")) {
                    units.add(name);
                } else if (word.paramLabel().equals("UNIT|LOT")) {
                    unitsOrLots.add(name);
                }
            }
        }
        return TEMPLATE.replace("@COMMANDS@", String.join(" ", Commands.names()))
                .replace("@OPTIONS@", options)
                .replace("@VALUES@", cases(values))
                .replace("@WITHIN@", within)
                .replace("@UNITS@", units.stream().distinct().collect(Collectors.joining(" | ")))
                .replace("@UNITS_OR_LOTS@", unitsOrLots.stream().distinct().collect(Collectors.joining(" | ")));
    }

    private static void collect(Map<String, String> values, String command, OptionSpec option) {
        String label = option.paramLabel();
        String key = command + ":" + option.longestName();
        if (option.arity().max() == 0) {
            values.put(key, "flag");
        } else if (ASKED.containsKey(option.longestName())) {
            values.put(key, "ask " + ASKED.get(option.longestName()));
        } else if (FILES.contains(label)) {
            values.put(key, "files");
        } else if (label.matches("[A-Za-z0-9_]+(\\|[A-Za-z0-9_]+)+")) {
            values.put(key, "words " + label.replace('|', ' '));
        } else {
            values.put(key, "nothing");
        }
    }

    private static String cases(Map<String, String> values) {
        Map<String, List<String>> keys = new TreeMap<>();
        values.forEach((key, what) ->
                keys.computeIfAbsent(what, w -> new ArrayList<>()).add(key));
        StringBuilder cases = new StringBuilder();
        keys.forEach((what, all) -> {
            if (!what.equals("flag")) {
                cases.append("        ")
                        .append(String.join(" | ", all))
                        .append(") value=\"")
                        .append(what)
                        .append("\" ;;\n");
            }
        });
        return cases.toString();
    }

    private static final String TEMPLATE = """
            # Completion of salvedge for bash.
            _salvedge() {
                local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} command= shop=() options= value= i
                COMPREPLY=()
                for ((i = 1; i < COMP_CWORD; i++)); do
                    case ${COMP_WORDS[i]} in
                        --shop) shop=(--shop "${COMP_WORDS[i+1]}"); ((i++)) ;;
                        -*) ;;
                        *) command=${COMP_WORDS[i]}; break ;;
                    esac
                done
                _salvedge_ask() { "${COMP_WORDS[0]}" "${shop[@]}" completion "$@" 2> /dev/null; }
                # What the shop holds is text, never a command: it is compared, not read by the shell.
                _salvedge_offer() {
                    local line kept=
                    [ "$value" != "ask keys" ] || kept=${1%"${1##*,}"}
                    while IFS= read -r line; do
                        [[ $line != "${1#"$kept"}"* ]] || COMPREPLY+=("$kept$line")
                    done
                }
                if [ -z "$command" ]; then
                    if [ "$before" = --shop ]; then
                        COMPREPLY=($(compgen -d -- "$word"))
                    else
                        COMPREPLY=($(compgen -W "@COMMANDS@ help --shop --help --version" -- "$word"))
                    fi
                    return
                fi
                case $command in
            @OPTIONS@        help) COMPREPLY=($(compgen -W "@COMMANDS@" -- "$word")); return ;;
                    *) return ;;
                esac
                case $command:$before in
            @VALUES@    esac
                case $value in
                    files) COMPREPLY=($(compgen -f -- "$word")); return ;;
                    words*) COMPREPLY=($(compgen -W "${value#words }" -- "$word")); return ;;
                    ask*) _salvedge_offer "$word" < <(_salvedge_ask "${value#ask }"); return ;;
                    nothing) return ;;
                esac
                case $word in
                    -*) COMPREPLY=($(compgen -W "$options" -- "$word")); return ;;
                esac
                case $command in
                    @UNITS@) _salvedge_offer "$word" < <(_salvedge_ask labels "$word") ;;
                    @UNITS_OR_LOTS@) _salvedge_offer "$word" < <(_salvedge_ask labels "$word"; _salvedge_ask lots) ;;
            @WITHIN@        completion) COMPREPLY=($(compgen -W "bash" -- "$word")) ;;
                    *) COMPREPLY=($(compgen -f -- "$word")) ;;
                esac
            }
            complete -o filenames -F _salvedge salvedge
            """;
}
