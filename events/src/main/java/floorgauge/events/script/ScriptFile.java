package floorgauge.events.script;

import floorgauge.events.step.Spots;
import floorgauge.events.yaml.NearestWord;
import floorgauge.events.yaml.YamlText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * Reads a script: YAML with a name, the roles and where they start, who has the ball, and steps in plain words.
 *
 * <pre>
 * script: pin-down
 * ball: 1
 * players: {1: top, 2: right block, 5: right elbow}
 * steps:
 *   - 5 screens for 2 at right block (down screen)
 *   - 2 cuts to right slot off 5
 *   - 1 passes to 2
 * </pre>
 */
public final class ScriptFile {

    private static final List<String> KEYS = List.of("script", "about", "ball", "players", "steps");
    private static final List<String> GROUPS = List.of("together", "either", "maybe");
    private static final int MOST_VARIANTS = 64;
    private static final int MOST_PLAYERS = 5;

    private final String source;
    private final Map<String, Optional<String>> players = new LinkedHashMap<>();
    private String name = "";
    private String about = "";
    private String ball = "";
    private int groups;

    private ScriptFile(String source) {
        this.source = source;
    }

    /**
     * @param text of the file
     * @param source the file's name, for messages
     * @throws ScriptException with the line and a hint
     */
    public static Script read(String text, String source) {
        Node root = YamlText.parse(text, (line, message) -> new ScriptException(source, line, message))
                .orElseThrow(() -> new ScriptException(source, 1, "the file is empty; a script has " + KEYS));
        return new ScriptFile(source).script(root);
    }

    private Script script(Node root) {
        Map<String, Node> fields = fields(root);
        name = scalar(required(fields, "script", root), "script");
        about = fields.containsKey("about") ? scalar(fields.get("about"), "about") : "";
        players(required(fields, "players", root));
        Node ballNode = required(fields, "ball", root);
        ball = scalar(ballNode, "ball");
        known(ballNode, ball);
        Node steps = required(fields, "steps", root);
        List<List<ScriptStep>> variants = sequence(steps, "steps", 0, 0);
        if (variants.stream().anyMatch(List::isEmpty)) {
            throw at(steps, "a way through the script has no step; a script is more than what may be left out");
        }
        variants.forEach(v -> new BallCheck(source, ball).check(v));
        return new Script(name, about, ball, players, variants);
    }

    private Map<String, Node> fields(Node root) {
        if (!(root instanceof MappingNode mapping)) {
            throw at(root, "a script holds 'key: value' lines: " + String.join(", ", KEYS));
        }
        Map<String, Node> fields = new LinkedHashMap<>();
        for (NodeTuple entry : mapping.getValue()) {
            String key = scalar(entry.getKeyNode(), "a key");
            if (!KEYS.contains(key)) {
                throw at(entry.getKeyNode(), "unknown key '" + key + "'; " + NearestWord.hint(key, KEYS));
            }
            if (fields.put(key, entry.getValueNode()) != null) {
                throw at(entry.getKeyNode(), "'" + key + "' stands twice; keep one of the two");
            }
        }
        return fields;
    }

    private Node required(Map<String, Node> fields, String key, Node root) {
        if (!fields.containsKey(key)) {
            throw at(root, "'" + key + "' is missing; a script has " + String.join(", ", KEYS));
        }
        return fields.get(key);
    }

    private void players(Node node) {
        if (!(node instanceof MappingNode mapping) || mapping.getValue().isEmpty()) {
            throw at(node, "players must hold 'role: place' lines, such as '1: top'");
        }
        for (NodeTuple entry : mapping.getValue()) {
            String role = scalar(entry.getKeyNode(), "a role");
            String place = scalar(entry.getValueNode(), "the place of " + role);
            if (role.isBlank() || role.contains(" ")) {
                throw at(entry.getKeyNode(), "a role is one word or number, not '" + role + "'");
            }
            boolean anywhere = place.isEmpty() || place.equals("anywhere");
            if (!anywhere) {
                place(entry.getValueNode(), place);
            }
            if (players.put(role, anywhere ? Optional.empty() : Optional.of(place)) != null) {
                throw at(entry.getKeyNode(), "role '" + role + "' stands twice; keep one of the two");
            }
        }
        if (players.size() > MOST_PLAYERS) {
            throw at(node, players.size() + " players; a team has " + MOST_PLAYERS);
        }
    }

    /** All ways through a list of steps. */
    private List<List<ScriptStep>> sequence(Node node, String what, int group, int lane) {
        if (!(node instanceof SequenceNode list) || list.getValue().isEmpty()) {
            throw at(node, what + " must hold a list of steps, such as '- " + ScriptVerb.PASS.example() + "'");
        }
        List<List<ScriptStep>> ways = List.of(List.of());
        for (Node item : list.getValue()) {
            ways = joined(ways, item(item, group, lane));
            if (ways.size() > MOST_VARIANTS) {
                throw at(
                        item,
                        "the alternatives make more than " + MOST_VARIANTS
                                + " ways through the script; write the rest as a second script");
            }
        }
        return ways;
    }

    private static List<List<ScriptStep>> joined(List<List<ScriptStep>> before, List<List<ScriptStep>> after) {
        List<List<ScriptStep>> joined = new ArrayList<>();
        for (List<ScriptStep> a : before) {
            for (List<ScriptStep> b : after) {
                List<ScriptStep> way = new ArrayList<>(a);
                way.addAll(b);
                joined.add(way);
            }
        }
        return joined;
    }

    private List<List<ScriptStep>> item(Node node, int group, int lane) {
        if (node instanceof ScalarNode) {
            return List.of(List.of(step(node, group, lane)));
        }
        if (!(node instanceof MappingNode mapping) || mapping.getValue().size() != 1) {
            throw at(
                    node,
                    "a step is a line such as '" + ScriptVerb.CUT.example() + "', or one of "
                            + String.join(", ", GROUPS));
        }
        NodeTuple entry = mapping.getValue().get(0);
        String key = scalar(entry.getKeyNode(), "a step");
        Node value = entry.getValueNode();
        return switch (key) {
            case "together" -> together(value);
            case "either" -> either(value, group, lane);
            case "maybe" -> maybe(value, group, lane);
            default -> throw at(entry.getKeyNode(), "unknown word '" + key + "'; " + NearestWord.hint(key, GROUPS));
        };
    }

    /** Each item is a lane of its own: a step, or a list of steps that keep their order. */
    private List<List<ScriptStep>> together(Node node) {
        if (!(node instanceof SequenceNode list) || list.getValue().size() < 2) {
            throw at(node, "together must hold two steps at least, each a step or a list of steps");
        }
        groups++;
        int group = groups;
        List<List<ScriptStep>> ways = List.of(List.of());
        for (int lane = 0; lane < list.getValue().size(); lane++) {
            Node item = list.getValue().get(lane);
            ways = joined(
                    ways,
                    item instanceof SequenceNode
                            ? sequence(item, "a part of together", group, lane)
                            : item(item, group, lane));
        }
        return ways;
    }

    private List<List<ScriptStep>> either(Node node, int group, int lane) {
        if (!(node instanceof SequenceNode list) || list.getValue().size() < 2) {
            throw at(node, "either must hold two alternatives at least, each a list of steps");
        }
        List<List<ScriptStep>> ways = new ArrayList<>();
        for (Node alternative : list.getValue()) {
            ways.addAll(
                    alternative instanceof SequenceNode
                            ? sequence(alternative, "an alternative", group, lane)
                            : item(alternative, group, lane));
        }
        return ways;
    }

    /** Steps that move the ball are an alternative to nothing, so that who has the ball is known in every way; others may be left out. */
    private List<List<ScriptStep>> maybe(Node node, int group, int lane) {
        List<List<ScriptStep>> ways =
                node instanceof SequenceNode ? sequence(node, "maybe", group, lane) : item(node, group, lane);
        if (ways.stream().flatMap(List::stream).anyMatch(s -> s.verb().movesBall())) {
            List<List<ScriptStep>> withNothing = new ArrayList<>(ways);
            withNothing.add(List.of());
            return withNothing;
        }
        return ways.stream()
                .map(way -> way.stream().map(ScriptFile::madeOptional).toList())
                .toList();
    }

    private static ScriptStep madeOptional(ScriptStep s) {
        return new ScriptStep(
                s.line(), s.who(), s.verb(), s.mate(), s.place(), s.off(), s.kind(), true, s.group(), s.lane());
    }

    private ScriptStep step(Node node, int group, int lane) {
        StepText text = StepText.split(((ScalarNode) node).getValue());
        known(node, text.who());
        ScriptVerb verb = ScriptVerb.of(text.verb())
                .orElseThrow(() -> at(
                        node,
                        text.verb().isEmpty()
                                ? "'" + text.who() + "' does what? A step reads '" + ScriptVerb.CUT.example() + "'"
                                : "unknown verb '" + text.verb() + "'; "
                                        + NearestWord.hint(text.verb(), ScriptVerb.words())));
        for (String part : text.parts().keySet()) {
            if (!verb.parts().contains(part)) {
                throw at(node, "'" + part + "' does not go with '" + verb.word() + "'; write '" + verb.example() + "'");
            }
        }
        if (!verb.need().isEmpty() && !text.parts().containsKey(verb.need())) {
            throw at(
                    node,
                    text.who() + " " + verb.word() + " " + verb.need() + " whom or where? Write '" + verb.example()
                            + "'");
        }
        Optional<String> mate = verb.meansTeamMate() ? part(text, verb.need()) : Optional.empty();
        Optional<String> off = part(text, "off");
        Optional<String> place = part(text, verb == ScriptVerb.SCREEN ? "at" : verb.meansTeamMate() ? "none" : "to");
        mate.ifPresent(m -> mate(node, text.who(), m));
        off.ifPresent(m -> mate(node, text.who(), m));
        place.ifPresent(p -> place(node, p));
        Optional<String> kind = Optional.of(text.kind()).filter(k -> !k.isEmpty());
        kind.ifPresent(k -> kind(node, verb, k));
        return new ScriptStep(YamlText.line(node), text.who(), verb, mate, place, off, kind, false, group, lane);
    }

    private static Optional<String> part(StepText text, String word) {
        return Optional.ofNullable(text.parts().get(word));
    }

    private void mate(Node node, String who, String mate) {
        known(node, mate);
        if (mate.equals(who)) {
            throw at(node, "'" + who + "' cannot do this with himself; name a team-mate");
        }
    }

    private void known(Node node, String role) {
        if (!players.containsKey(role)) {
            throw at(node, "unknown role '" + role + "'; " + NearestWord.hint(role, players.keySet()));
        }
    }

    private void place(Node node, String place) {
        if (!Spots.names().contains(place)) {
            throw at(node, "unknown place '" + place + "'; " + NearestWord.hint(place, Spots.names()));
        }
    }

    private void kind(Node node, ScriptVerb verb, String kind) {
        if (verb != ScriptVerb.SCREEN) {
            throw at(node, "'(" + kind + ")' goes with a screen only");
        }
        if (!ScreenWords.KINDS.contains(kind)) {
            throw at(node, "unknown screen '" + kind + "'; " + NearestWord.hint(kind, ScreenWords.KINDS));
        }
    }

    private String scalar(Node node, String what) {
        if (node instanceof ScalarNode scalar) {
            return scalar.getValue().strip();
        }
        throw at(node, what + " must be a single value");
    }

    private ScriptException at(Node node, String message) {
        return new ScriptException(source, YamlText.line(node), message);
    }
}
