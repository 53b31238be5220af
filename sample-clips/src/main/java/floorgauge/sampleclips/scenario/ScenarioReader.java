package floorgauge.sampleclips.scenario;

import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.sampleclips.input.LocatedValue;
import floorgauge.sampleclips.input.LocatedYaml;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/** Reads a scenario's YAML; every error names file, line, field and what was expected. */
final class ScenarioReader {

    private static final List<String> FIELDS =
            List.of("title", "rules", "end", "duration", "attack", "defence", "ball", "players", "play", "versions");
    private static final List<String> STEP_FIELDS = List.of("label", "at", "after", "with", "wait", "who");

    private final String file;
    private final String name;
    private RuleSet rules = RuleSet.fiba();

    private ScenarioReader(String file, String name) {
        this.file = file;
        this.name = name;
    }

    /**
     * @param file its name, for messages
     * @param name of the scenario
     * @param text the YAML
     * @throws floorgauge.sampleclips.input.InputException where it is not a scenario
     */
    static Scenario read(String file, String name, String text) {
        return new ScenarioReader(file, name).scenario(LocatedYaml.parse(file, text));
    }

    private Scenario scenario(LocatedValue root) {
        root.fields(FIELDS);
        root.optional("rules")
                .ifPresent(f -> rules = RuleSet.named(f.text())
                        .orElseThrow(() -> f.error("unknown rule set '" + f.text() + "'; expected one of "
                                + String.join(
                                        ", ",
                                        RuleSet.all().stream()
                                                .map(RuleSet::name)
                                                .toList()))));
        SortedMap<Role, Spot> attack = places(root.required("attack"), false);
        SortedMap<Role, Spot> defence =
                root.optional("defence").map(f -> places(f, true)).orElseGet(TreeMap::new);
        Role ball = Role.read(root.required("ball"));
        if (!attack.containsKey(ball)) {
            throw root.required("ball").error("expected one of the attackers " + attack.keySet());
        }
        defence.keySet().forEach(d -> mustPlay(root.required("defence"), d, attack));
        double duration = root.required("duration").number(1, 60);
        List<Step> steps = steps(root.required("play"), attack, duration);
        return new Scenario(
                file,
                name,
                root.required("title").text(),
                rules,
                root.optional("end").map(ScenarioReader::end).orElse(CourtEnd.POSITIVE_X),
                duration,
                attack,
                defence,
                ball,
                steps,
                versions(root, steps, attack),
                root.optional("players").map(f -> cast(f, attack)).orElseGet(TreeMap::new));
    }

    private static CourtEnd end(LocatedValue field) {
        return switch (field.text()) {
            case "positive" -> CourtEnd.POSITIVE_X;
            case "negative" -> CourtEnd.NEGATIVE_X;
            default -> throw field.error("expected positive or negative, the sign of x at the rim under attack");
        };
    }

    private SortedMap<Role, Spot> places(LocatedValue field, boolean defence) {
        SortedMap<Role, Spot> places = new TreeMap<>();
        field.fields().forEach((who, where) -> {
            Role role = Role.parse(who)
                    .filter(r -> r.defends() == defence)
                    .orElseThrow(() -> where.error("expected players "
                            + (defence ? "x1 to x5" : "1 to 5")
                            + ", at most five a side, found '" + who + "'"));
            places.put(role, Spot.read(where, rules));
        });
        if (!defence && places.size() < 2) {
            throw field.error("expected two to five attackers, found " + places.size());
        }
        return places;
    }

    private static void mustPlay(LocatedValue field, Role role, SortedMap<Role, Spot> attack) {
        if (!attack.containsKey(Role.attacker(role.number()))) {
            throw field.error("player " + role + " does not play; the attackers are " + attack.keySet()
                    + ", each with a defender of the same number");
        }
    }

    private List<Step> steps(LocatedValue field, SortedMap<Role, Spot> attack, double duration) {
        List<Step> steps = new ArrayList<>();
        Map<String, Integer> lines = new HashMap<>();
        for (LocatedValue item : field.items()) {
            Step step = step(item, steps.size(), attack, duration);
            step.start().base().ifPresent(base -> {
                if (!lines.containsKey(base)) {
                    throw item.error("no earlier step is labelled '" + base + "'");
                }
            });
            Integer earlier = lines.put(step.label(), step.line());
            if (earlier != null) {
                throw item.error("label '" + step.label() + "' stands already on line " + earlier);
            }
            steps.add(step);
        }
        return List.copyOf(steps);
    }

    private Step step(LocatedValue item, int index, SortedMap<Role, Spot> attack, double duration) {
        Verb verb = verb(item);
        LocatedValue main = item.required(verb.word());
        List<String> known = new ArrayList<>(STEP_FIELDS);
        known.add(verb.word());
        known.addAll(verb.settings());
        item.fields(known);
        Role who = player(item.required("who"), attack);
        if (who.defends() != (verb.side() == Verb.Side.DEFENCE)) {
            throw item.error("'" + verb.word() + "' is for "
                    + (who.defends() ? "an attacker, 1 to 5" : "a defender, x1 to x5") + ", found " + who);
        }
        Optional<Role> other = Optional.empty();
        Optional<Spot> to = Optional.empty();
        switch (verb.main()) {
            case SPOT -> to = Optional.of(Spot.read(main, rules));
            case TEAM_MATE -> other = Optional.of(mate(main, who, attack));
            case OPPONENT -> other = Optional.of(opponent(main, who, attack));
            case NOTHING -> {}
        }
        Step step = new Step(
                item.line(),
                item.optional("label").map(LocatedValue::text).orElse("step " + (index + 1)),
                start(item, duration),
                who,
                verb,
                other,
                to,
                item.optional("via").map(f -> Spot.read(f, rules)),
                item.optional("off").map(f -> mate(f, who, attack)),
                item.optional("for").map(f -> mate(f, who, attack)),
                item.optional("toward").map(f -> Spot.read(f, rules)),
                item.optional("at spot").map(f -> Spot.read(f, rules)),
                item.optional("pace").map(f -> f.number(0.3, 9)).orElse(verb.usualPace()),
                number(item, "lasting", 0.1, 20),
                number(item, "gap", 0.5, 6),
                item.optional("kind").map(f -> kind(f, verb)),
                number(item, "facing", -360, 360));
        if (verb == Verb.SCREEN && step.toward().isEmpty() && step.at().isEmpty()) {
            throw item.error("a screen needs 'toward' (where its user goes) or 'at spot'");
        }
        if (verb == Verb.SCREEN && step.forWhom().isEmpty()) {
            throw item.error("a screen needs 'for' (the team-mate who uses it)");
        }
        return step;
    }

    private static String kind(LocatedValue field, Verb verb) {
        if (!verb.kinds().contains(field.text())) {
            throw field.error("unknown kind of " + verb.word() + " '" + field.text() + "'; expected one of "
                    + String.join(", ", verb.kinds()));
        }
        return field.text();
    }

    private Verb verb(LocatedValue item) {
        Verb found = null;
        for (Map.Entry<String, LocatedValue> entry : item.fields().entrySet()) {
            Optional<Verb> verb = Verb.of(entry.getKey());
            if (verb.isPresent() && found != null) {
                throw item.error("expected one verb a step, found '" + found.word() + "' and '" + entry.getKey() + "'");
            }
            found = verb.orElse(found);
        }
        if (found == null) {
            List<String> odd = item.fields().keySet().stream()
                    .filter(k -> !STEP_FIELDS.contains(k))
                    .toList();
            throw item.error("no verb that is known" + (odd.isEmpty() ? "" : " in " + odd) + "; expected one of "
                    + Verb.words());
        }
        return found;
    }

    private static Step.Start start(LocatedValue item, double duration) {
        long given = List.of("at", "after", "with").stream()
                .filter(k -> item.fields().containsKey(k))
                .count();
        if (given != 1) {
            throw item.error("expected one of 'at' (seconds), 'after' (a label) or 'with' (a label)");
        }
        double wait = item.optional("wait").map(f -> f.number(0, 30)).orElse(0.0);
        if (item.fields().containsKey("at")) {
            if (item.fields().containsKey("wait")) {
                throw item.required("wait").error("expected only with 'after' or 'with'");
            }
            return new Step.Start(Optional.empty(), true, item.required("at").number(0, duration));
        }
        boolean with = item.fields().containsKey("with");
        return new Step.Start(Optional.of(item.required(with ? "with" : "after").text()), with, wait);
    }

    private static Role player(LocatedValue field, SortedMap<Role, Spot> attack) {
        Role role = Role.read(field);
        mustPlay(field, role, attack);
        return role;
    }

    private static Role mate(LocatedValue field, Role who, SortedMap<Role, Spot> attack) {
        Role role = player(field, attack);
        if (role.defends() != who.defends() || role.equals(who)) {
            throw field.error("expected a team-mate of " + who + ", found " + role);
        }
        return role;
    }

    private static Role opponent(LocatedValue field, Role who, SortedMap<Role, Spot> attack) {
        Role role = player(field, attack);
        if (role.defends() == who.defends()) {
            throw field.error("expected an opponent of " + who + ", found " + role);
        }
        return role;
    }

    private static OptionalDouble number(LocatedValue item, String name, double least, double most) {
        return item.optional(name)
                .map(f -> OptionalDouble.of(f.number(least, most)))
                .orElse(OptionalDouble.empty());
    }

    private static Map<String, List<Fault>> versions(
            LocatedValue root, List<Step> steps, SortedMap<Role, Spot> attack) {
        Map<String, List<Fault>> versions = new LinkedHashMap<>();
        versions.put(Scenario.SOUND, List.of());
        root.optional("versions")
                .ifPresent(f -> f.fields().forEach((name, list) -> {
                    if (name.equals(Scenario.SOUND) || !name.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
                        throw list.error("expected a name of lower-case words joined by hyphens, other than sound");
                    }
                    versions.put(
                            name,
                            list.items().stream()
                                    .map(i -> FaultReader.read(i, steps, attack))
                                    .toList());
                }));
        return versions;
    }

    private static SortedMap<Role, CastDetail> cast(LocatedValue field, SortedMap<Role, Spot> attack) {
        SortedMap<Role, CastDetail> cast = new TreeMap<>();
        field.fields().forEach((who, detail) -> {
            Role role = Role.parse(who).orElseThrow(() -> detail.error("expected a player, 1 to 5 or x1 to x5"));
            mustPlay(detail, role, attack);
            detail.fields(List.of("name", "number", "height", "build", "skin", "shirt"));
            cast.put(
                    role,
                    new CastDetail(
                            detail.optional("name").map(LocatedValue::text),
                            detail.optional("number")
                                    .map(f -> OptionalInt.of(f.wholeNumber(0, 99)))
                                    .orElse(OptionalInt.empty()),
                            number(detail, "height", 1.4, 2.3),
                            number(detail, "build", 0.7, 1.4),
                            colour(detail, "skin"),
                            colour(detail, "shirt")));
        });
        return cast;
    }

    private static OptionalInt colour(LocatedValue detail, String name) {
        return detail.optional(name)
                .map(f -> {
                    if (!f.text().matches("[0-9a-fA-F]{6}")) {
                        throw f.error("expected a colour as six hexadecimal digits, quoted");
                    }
                    return OptionalInt.of(Integer.parseInt(f.text(), 16));
                })
                .orElse(OptionalInt.empty());
    }
}
