package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.input.LocatedValue;
import java.util.List;
import java.util.SortedMap;

/** Reads one fault of a version. */
final class FaultReader {

    private FaultReader() {}

    static Fault read(LocatedValue field, List<Step> steps, SortedMap<Role, Spot> attack) {
        LocatedValue kind = field.required("fault");
        return switch (kind.text()) {
            case "screen misses" ->
                new Fault.ScreenMisses(step(field, steps, Verb.SCREEN), size(field, "by", "step", 0.05, 3));
            case "screener moving" ->
                new Fault.ScreenerMoving(step(field, steps, Verb.SCREEN), size(field, "speed", "step", 0.3, 3));
            case "pass held" -> new Fault.Late(step(field, steps, Verb.PASS), size(field, "for", "step", 0.1, 5));
            case "pass stolen" -> {
                field.fields(List.of("fault", "step"));
                yield new Fault.Stolen(step(field, steps, Verb.PASS));
            }
            case "players stand" -> {
                field.fields(List.of("fault", "from", "for"));
                yield new Fault.Standing(
                        field.required("from").number(0, 60),
                        field.required("for").number(0.5, 20));
            }
            case "late cut" -> new Fault.Late(step(field, steps, null), size(field, "by", "step", 0.1, 5));
            case "early cut" -> new Fault.Early(step(field, steps, null), size(field, "by", "step", 0.1, 5));
            case "drift" -> drift(field, attack);
            case "left out" -> {
                field.fields(List.of("fault", "step"));
                yield new Fault.LeftOut(step(field, steps, null));
            }
            default ->
                throw kind.error(
                        "unknown fault '" + kind.text() + "'; expected one of " + String.join(", ", Fault.words()));
        };
    }

    private static double size(LocatedValue field, String name, String also, double least, double most) {
        field.fields(List.of("fault", also, name));
        return field.required(name).number(least, most);
    }

    private static String step(LocatedValue field, List<Step> steps, Verb verb) {
        LocatedValue label = field.required("step");
        Step step = steps.stream()
                .filter(s -> s.label().equals(label.text()))
                .findFirst()
                .orElseThrow(() -> label.error("no step is labelled '" + label.text() + "'"));
        if (verb != null && step.verb() != verb) {
            throw label.error("expected a step with the verb '" + verb.word() + "', found '"
                    + step.verb().word() + "'");
        }
        return step.label();
    }

    private static Fault drift(LocatedValue field, SortedMap<Role, Spot> attack) {
        field.fields(List.of("fault", "who", "towards", "within", "from"));
        Role who = attacker(field.required("who"), attack);
        Role towards = attacker(field.required("towards"), attack);
        if (who.equals(towards)) {
            throw field.required("towards").error("expected another attacker than " + who);
        }
        return new Fault.Drift(
                who,
                towards,
                field.required("within").number(0.6, 5),
                field.required("from").number(0, 60));
    }

    private static Role attacker(LocatedValue field, SortedMap<Role, Spot> attack) {
        Role role = Role.read(field);
        if (!attack.containsKey(role)) {
            throw field.error("expected one of the attackers " + attack.keySet() + ", found " + role);
        }
        return role;
    }
}
