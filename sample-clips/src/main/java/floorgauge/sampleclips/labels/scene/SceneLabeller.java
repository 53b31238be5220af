package floorgauge.sampleclips.labels.scene;

import floorgauge.events.finding.FindingKind;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.LabelledPerson;
import floorgauge.sampleclips.labels.LabelledPossession;
import floorgauge.sampleclips.labels.SceneReference;
import floorgauge.sampleclips.labels.UnclearSpan;
import floorgauge.sampleclips.scenario.Control;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scene.Person;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Labels a scene with its true events. */
public final class SceneLabeller {

    private SceneLabeller() {}

    /**
     * @param scene a scene of the library or of a file
     * @param seed it was played with
     * @return labels without a film; {@link FilmLabels#of} adds the film that was drawn
     */
    public static FilmLabels label(PlayedScene scene, long seed) {
        Motion motion = new Motion(scene);
        ScreenTruth screens = new ScreenTruth(motion);
        PassTruth passes = new PassTruth(motion, screens.screens());
        CutTruth cuts = new CutTruth(motion);
        List<LabelledEvent> events = new ArrayList<>();
        events.addAll(screens.events());
        events.addAll(passes.events());
        events.addAll(cuts.events());
        events.addAll(new DefenceTruth(motion, passes).events());
        events.addAll(new SpacingTruth(
                        motion,
                        (tick, id) -> screens.busy(tick, id) || cuts.busy(tick, id) || handsOff(motion, tick, id))
                .events());
        return new FilmLabels(
                Optional.empty(),
                Optional.of(new SceneReference(scene.name(), seed)),
                FilmLabels.TRUTH,
                FilmLabels.GUIDELINE_VERSION,
                scene.rules().name(),
                Optional.of(scene.end()),
                scene.people().stream().map(p -> person(p, scene)).toList(),
                List.of(possession(motion, scene)),
                inOrder(events),
                afterTurnover(possession(motion, scene), scene));
    }

    private static LabelledPerson person(Person person, PlayedScene scene) {
        LabelledPerson.Side side = scene.attackers().contains(person.id())
                ? LabelledPerson.Side.ATTACK
                : scene.defenders().contains(person.id()) ? LabelledPerson.Side.DEFENCE : LabelledPerson.Side.OTHER;
        return new LabelledPerson(
                person.id(),
                side,
                person.jerseyNumber() < 0 ? OptionalInt.empty() : OptionalInt.of(person.jerseyNumber()),
                Optional.of(person.name()));
    }

    /** A practice repetition: from the start to the shot's release, the turnover, or the end. */
    private static LabelledPossession possession(Motion motion, PlayedScene scene) {
        boolean shot = scene.controls().stream().anyMatch(c -> c.kind() == Control.Kind.SHOT);
        boolean lost = scene.controls().stream()
                .anyMatch(c -> c.to().isPresent() && scene.defenders().contains(c.to().getAsInt()));
        String outcome = shot ? "shot" : lost ? "turnover" : "end of film";
        double end = motion.time(motion.possessionEnd());
        return new LabelledPossession(0, end, scene.attackers(), scene.defenders(), outcome);
    }

    /** What comes of a turnover is not part of the scene: nobody there knows what he is to do. */
    private static List<UnclearSpan> afterTurnover(LabelledPossession possession, PlayedScene scene) {
        return possession.outcome().equals("turnover")
                ? List.of(new UnclearSpan(possession.toSeconds(), scene.durationSeconds(), "after the turnover"))
                : List.of();
    }

    /** Within a second of a handoff. */
    private static boolean handsOff(Motion motion, int tick, int id) {
        List<Control> controls = motion.scene().controls();
        for (int i = 1; i < controls.size(); i++) {
            Control before = controls.get(i - 1);
            Control after = controls.get(i);
            boolean handoff = before.controlled() && after.controlled() && before.from() != after.from();
            boolean involved = before.from() == id || after.from() == id;
            if (handoff && involved && Math.abs(motion.time(tick) - after.fromSeconds()) < 1) {
                return true;
            }
        }
        return false;
    }

    private static List<LabelledEvent> inOrder(List<LabelledEvent> events) {
        List<LabelledEvent> sorted = new ArrayList<>(events);
        sorted.sort(Comparator.comparingDouble(LabelledEvent::fromSeconds)
                .thenComparing(LabelledEvent::kind, Comparator.comparingInt(FindingKind::ordinal))
                .thenComparing(e -> e.roles().toString()));
        return LabelledEvent.numbered(sorted);
    }
}
