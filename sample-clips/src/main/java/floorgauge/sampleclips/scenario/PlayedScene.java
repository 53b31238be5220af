package floorgauge.sampleclips.scenario;

import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.sampleclips.movement.Recording;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.scene.SceneState;
import java.util.List;
import java.util.Optional;

/** A scenario played with a seed. Immutable. */
public final class PlayedScene implements Scene {

    private final String name;
    private final RuleSet rules;
    private final CourtEnd end;
    private final List<Person> people;
    private final Recording recording;
    private final BallCourse ball;
    private final List<PlayedStep> steps;
    private final List<Guarding> guarding;

    PlayedScene(
            String name,
            Scenario scenario,
            List<Person> people,
            Recording recording,
            List<Control> controls,
            List<PlayedStep> steps,
            List<Guarding> guarding) {
        this.name = name;
        this.rules = scenario.rules();
        this.end = scenario.end();
        this.people = List.copyOf(people);
        this.recording = recording;
        this.ball = new BallCourse(recording, controls, rules.rim(end), rules.rimHeightMetres());
        this.steps = List.copyOf(steps);
        this.guarding = List.copyOf(guarding);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public RuleSet rules() {
        return rules;
    }

    /** The rim under attack. */
    public CourtEnd end() {
        return end;
    }

    @Override
    public double durationSeconds() {
        return recording.durationSeconds();
    }

    @Override
    public List<Person> people() {
        return people;
    }

    @Override
    public SceneState at(double timeSeconds) {
        List<PersonState> states = recording.at(timeSeconds);
        return new SceneState(timeSeconds, states, Optional.of(ball.at(timeSeconds)));
    }

    /** What the ball does, span by span, without gaps, from 0 to the end. */
    public List<Control> controls() {
        return ball.controls();
    }

    /** The steps that were begun, in order of their start. */
    public List<PlayedStep> steps() {
        return steps;
    }

    /** Who guards whom, change by change, from time 0. */
    public List<Guarding> guarding() {
        return guarding;
    }

    /** Ids of the attackers, in order. */
    public List<Integer> attackers() {
        return guarding.get(0).men().values().stream().sorted().toList();
    }

    /** Ids of the defenders, in order. */
    public List<Integer> defenders() {
        return List.copyOf(guarding.get(0).men().keySet());
    }
}
