/** Kebab-case names that stay the same for ever: answers, recorded questions and outcomes refer to them. */
export type TopicId = string;
export type PartId = string;
export type VanId = string;
export type CauseId = string;
export type SiteId = string;

/** A booking's reference, such as BR-2702. */
export type BookingRef = string;

export const ID_PATTERN = /^[a-z0-9]+(-[a-z0-9]+)*$/;
