package floorgauge.eval.card;

import floorgauge.eval.film.HeldOutFilm;
import floorgauge.sampleclips.render.camera.CameraStyle;
import java.util.List;

/** The films of the card, the most usual camera first. */
final class HeldOutFilms {

    static final List<HeldOutFilm> ALL = List.of(
            new HeldOutFilm("horns-double-sound", CameraStyle.TRIPOD_HIGH, 9001),
            new HeldOutFilm("motion-weak-cross-misses", CameraStyle.TRIPOD_SIDE, 9001),
            new HeldOutFilm("ball-screen-hedge-sound", CameraStyle.TRIPOD_CORNER, 9001));

    private HeldOutFilms() {}
}
