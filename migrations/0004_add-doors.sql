CREATE TABLE `answers` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`part_id` text NOT NULL,
	`person_id` text NOT NULL,
	`letter_id` text NOT NULL,
	`word` text NOT NULL,
	`until` text,
	`answered_on` text NOT NULL,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`person_id`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`part_id`) REFERENCES `parts`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`letter_id`) REFERENCES `letters`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `answers_to_part` ON `answers` (`collection_id`,`part_id`);--> statement-breakpoint
CREATE TABLE `calendar_events` (
	`collection_id` text NOT NULL,
	`uid` text NOT NULL,
	`fingerprint` text NOT NULL,
	`sequence` integer NOT NULL,
	`changed_at` text NOT NULL,
	PRIMARY KEY(`collection_id`, `uid`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `feeds` (
	`collection_id` text NOT NULL,
	`person_id` text NOT NULL,
	`secret_hash` text NOT NULL,
	`scopes` text NOT NULL,
	`made_at` text NOT NULL,
	PRIMARY KEY(`collection_id`, `person_id`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `feeds_secret` ON `feeds` (`secret_hash`);--> statement-breakpoint
CREATE TABLE `keys` (
	`name` text PRIMARY KEY NOT NULL,
	`value` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `mornings` (
	`collection_id` text NOT NULL,
	`person_id` text NOT NULL,
	`day` text NOT NULL,
	`finished_at` text NOT NULL,
	PRIMARY KEY(`collection_id`, `person_id`, `day`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `runs` (
	`job` text PRIMARY KEY NOT NULL,
	`good_at` text,
	`bad_at` text,
	`trouble` text
);
--> statement-breakpoint
ALTER TABLE `cars` ADD `left_on` text;--> statement-breakpoint
ALTER TABLE `cars` ADD `left_how` text;--> statement-breakpoint
ALTER TABLE `letters` ADD `door` text DEFAULT 'mail' NOT NULL;--> statement-breakpoint
ALTER TABLE `letters` ADD `copy_of` text;--> statement-breakpoint
ALTER TABLE `letters` ADD `ahead` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `letters` ADD `why` text;--> statement-breakpoint
ALTER TABLE `letters` ADD `in_doubt` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `letters` ADD `seen_at` text;--> statement-breakpoint
ALTER TABLE `memberships` ADD `hour` integer;--> statement-breakpoint
ALTER TABLE `memberships` ADD `not_cars` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
ALTER TABLE `memberships` ADD `not_severities` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
ALTER TABLE `memberships` ADD `repeat_days` integer DEFAULT 30 NOT NULL;--> statement-breakpoint
ALTER TABLE `memberships` ADD `quiet_from` text;--> statement-breakpoint
ALTER TABLE `memberships` ADD `quiet_to` text;--> statement-breakpoint
ALTER TABLE `memberships` ADD `yearly_month` integer DEFAULT 1;--> statement-breakpoint
ALTER TABLE `memberships` ADD `stopped_on` text;--> statement-breakpoint
ALTER TABLE `memberships` ADD `push_url` text;--> statement-breakpoint
ALTER TABLE `memberships` ADD `webhook_url` text;--> statement-breakpoint
ALTER TABLE `memberships` ADD `webhook_secret` text;