CREATE TABLE `car_places` (
	`collection_id` text NOT NULL,
	`car_id` text NOT NULL,
	`place_id` text NOT NULL,
	`since` text NOT NULL,
	PRIMARY KEY(`collection_id`, `car_id`),
	FOREIGN KEY (`collection_id`,`car_id`) REFERENCES `cars`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`place_id`) REFERENCES `places`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `places` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`name` text NOT NULL,
	`winter_low` real NOT NULL,
	`summer_high` real NOT NULL,
	`air` text NOT NULL,
	`shelter` text NOT NULL,
	`humidity` real,
	`heated_to` real,
	`hemisphere` text NOT NULL,
	`months` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `readings` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`part_id` text NOT NULL,
	`gauge` text NOT NULL,
	`day` text NOT NULL,
	`value` real NOT NULL,
	`typed` text NOT NULL,
	`unit` text NOT NULL,
	`warmth` real,
	`instrument` text NOT NULL,
	`note` text NOT NULL,
	`recorded_on` text NOT NULL,
	`recorded_by` text,
	`withdrawn_on` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`recorded_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`part_id`) REFERENCES `parts`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `readings_of_part` ON `readings` (`collection_id`,`part_id`) WHERE withdrawn_on is null;--> statement-breakpoint
ALTER TABLE `parts` ADD `details` text DEFAULT '{}' NOT NULL;