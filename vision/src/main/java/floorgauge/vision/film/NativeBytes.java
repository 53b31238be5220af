package floorgauge.vision.film;

import org.bytedeco.javacpp.Pointer;

/** Memory that somebody else owns, as FFmpeg's Java binding wants it. */
final class NativeBytes extends Pointer {

    /** @param address of the first byte; the owner must outlive this */
    NativeBytes(long address) {
        this.address = address;
    }
}
