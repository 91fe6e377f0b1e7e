CREATE TABLE `lay_ups` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`car_id` text NOT NULL,
	`parked_on` text NOT NULL,
	`return_on` text,
	`place_id` text,
	`visitor_id` text,
	`phone` text NOT NULL,
	`circumstances` text NOT NULL,
	`choices` text NOT NULL,
	`numbers` text NOT NULL,
	`papers` text NOT NULL,
	`note` text NOT NULL,
	`is_template` integer NOT NULL,
	`seen` text NOT NULL,
	`made_on` text NOT NULL,
	`made_by` text,
	`closed_on` text,
	`closed_how` text,
	`closed_by` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`visitor_id`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`made_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`closed_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`car_id`) REFERENCES `cars`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `lay_ups_of_car` ON `lay_ups` (`collection_id`,`car_id`,`parked_on`);--> statement-breakpoint
CREATE TABLE `own_steps` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`lay_up_id` text NOT NULL,
	`plan` text NOT NULL,
	`title` text NOT NULL,
	`days` integer NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`collection_id`,`lay_up_id`) REFERENCES `lay_ups`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `rounds` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`lay_up_id` text NOT NULL,
	`day` text NOT NULL,
	`answers` text NOT NULL,
	`note` text NOT NULL,
	`recorded_on` text NOT NULL,
	`recorded_by` text,
	`withdrawn_on` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`recorded_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`lay_up_id`) REFERENCES `lay_ups`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `rounds_of_lay_up` ON `rounds` (`collection_id`,`lay_up_id`);--> statement-breakpoint
CREATE TABLE `ticks` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`lay_up_id` text NOT NULL,
	`plan` text NOT NULL,
	`step` text NOT NULL,
	`state` text NOT NULL,
	`day` text NOT NULL,
	`note` text NOT NULL,
	`done_by` text DEFAULT '' NOT NULL,
	`cost` real,
	`recorded_on` text NOT NULL,
	`recorded_by` text,
	`withdrawn_on` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`recorded_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`lay_up_id`) REFERENCES `lay_ups`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `ticks_of_lay_up` ON `ticks` (`collection_id`,`lay_up_id`);--> statement-breakpoint
CREATE TABLE `told_of_stays` (
	`collection_id` text NOT NULL,
	`person_id` text NOT NULL,
	`lay_up_id` text NOT NULL,
	`matter` text NOT NULL,
	`said_on` text NOT NULL,
	`ahead` integer NOT NULL,
	`letter_id` text NOT NULL,
	PRIMARY KEY(`collection_id`, `person_id`, `lay_up_id`, `matter`, `said_on`),
	FOREIGN KEY (`collection_id`,`lay_up_id`) REFERENCES `lay_ups`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`letter_id`) REFERENCES `letters`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
