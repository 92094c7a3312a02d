package dev.reelproof.api.description;

/** In which order the description is completed: the greater number comes first. */
final class DescriptionOrder {
    static final int SECURITY = 30;
    static final int RESPONSES = 20;
    static final int NAMES = 10;

    private DescriptionOrder() {}
}
